package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.subject.PeopleFile;
import org.boardtopit.subject.PeopleSearch;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.WatchedReader;

/**
 * Everybody in the picture of a clip, whose faces may have to be hidden: looked for while somebody else reads the clip, kept in the
 * folder of work, and looked for again only where nothing is kept.
 */
final class PeopleReading {
    static final String STAGE = "faces";

    private final ClipSources sources;
    private final Optional<PeopleSearch> search;

    /**
     * Of one run.
     *
     * @param detector empty when nobody may be looked for anew
     */
    PeopleReading(ClipSources sources, Optional<PersonDetector> detector) {
        this.sources = sources;
        this.search = detector.map(PeopleSearch::new);
    }

    /**
     * Those that are kept, or else found now, for which the clip is read.
     *
     * @throws NotMeasuredNowException when none are kept and there is no detector to find them
     */
    List<PersonInView> of(ClipSource source) throws IOException, NotMeasuredNowException {
        Optional<List<PersonInView>> earlier = kept(source);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        if (search.isEmpty()) {
            throw new NotMeasuredNowException(
                    STAGE,
                    "where the heads are that must be hidden is not known any more; start process again to look for them",
                    null);
        }
        List<PersonInView> people;
        try (FrameReader reader = sources.open(source)) {
            people = search.get().search(reader);
        }
        keep(source, people);
        return people;
    }

    /** Those that are kept; empty when the clip has not been looked through. */
    static Optional<List<PersonInView>> kept(ClipSource source) {
        return PeopleFile.read(file(source), source.fingerprint());
    }

    private static Path file(ClipSource source) {
        return source.kept(".people");
    }

    private static void keep(ClipSource source, List<PersonInView> people) throws IOException {
        Files.createDirectories(file(source).getParent());
        PeopleFile.write(file(source), source.fingerprint(), people);
    }

    /** A reading of a clip that somebody does for another purpose. */
    @FunctionalInterface
    interface Reading<T> {
        T read(FrameReader reader) throws VideoException;
    }

    /**
     * Lets the clip be read for another purpose, and looks for people meanwhile where none are kept; the stages tell when.
     *
     * @param stage of that other purpose
     */
    <T> T beside(ClipSource source, Stages stages, String stage, Reading<T> reading) throws IOException {
        try (FrameReader reader = sources.open(source)) {
            if (search.isEmpty() || kept(source).isPresent()) {
                return reading.read(reader);
            }
            try (PeopleSearch.Looking looking = search.get().begin(reader.info())) {
                T result = reading.read(new WatchedReader(reader, frame -> see(looking, frame, stages, stage)));
                stages.begin(STAGE, stages.share());
                keep(source, looking.finish());
                stages.begin(stage, stages.share());
                return result;
            }
        }
    }

    private static void see(PeopleSearch.Looking looking, VideoFrame frame, Stages stages, String stage) {
        if (looking.isDue(frame)) {
            stages.begin(STAGE, stages.share());
            looking.see(frame);
            stages.begin(stage, stages.share());
        } else {
            looking.see(frame);
        }
    }
}
