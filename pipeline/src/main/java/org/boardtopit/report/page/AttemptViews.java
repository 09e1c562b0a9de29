package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.clips.Correction;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.report.page.AttemptView.Chapter;
import org.boardtopit.report.page.AttemptView.NumbersRow;
import org.boardtopit.report.page.AttemptView.NumbersView;
import org.boardtopit.report.page.AttemptView.Video;
import org.boardtopit.report.page.PageRows.ClipFile;
import org.boardtopit.report.page.SeriesView.Still;
import org.boardtopit.report.stills.StillInstant;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.wording.Warnings;
import org.boardtopit.wording.Words;

/** Puts one attempt into words. */
final class AttemptViews {
    private final Words words;
    private final Warnings warnings;
    private final Figures figures;
    private final Naming naming;
    private final PageFiles files;

    AttemptViews(Words words, PageFiles files) {
        this.words = words;
        this.warnings = new Warnings(words.language());
        this.figures = new Figures(words);
        this.naming = new Naming(words);
        this.files = files;
    }

    static String id(Attempt attempt) {
        return "attempt-" + attempt.number();
    }

    AttemptView view(Series series, Attempt attempt) {
        AttemptRow row = attempt.row();
        String who = naming.withoutName(series) + ", " + naming.attempt(series, attempt);
        String clip = attempt.file().name();
        return new AttemptView(
                id(attempt),
                naming.attempt(series, attempt),
                summary(attempt),
                attempt.isCorrected(),
                video(attempt, who).orElse(null),
                otherVideos(attempt, who),
                files.strip(clip).map(link -> still(link, "strip_caption", who)).orElse(null),
                files.phasePicture(clip)
                        .map(link -> still(link, "phases_caption", who))
                        .orElse(null),
                stills(attempt, who),
                contacts(attempt),
                phases(attempt),
                row.quality() == null ? "" : naming.word("quality_sentence", row.quality()),
                row.quality() == null ? "" : row.quality().label(),
                row.warnings().stream().map(warnings::of).toList(),
                attempt.file().corrections().stream().map(this::inWords).toList(),
                List.of());
    }

    private String inWords(Correction correction) {
        String contact = correction.contact();
        String where = contact.isEmpty()
                ? ""
                : Correction.KINDS.contains(contact)
                        ? words.get("contact_" + contact) + ", "
                        : words.format("contact_number", contact) + ", ";
        String what = (naming.word("correction", correction.field()) + " " + correction.text()).strip();
        String by = correction.by().isEmpty() ? "" : " " + words.format("corrected_by", correction.by());
        return where + what + by + (correction.note().isEmpty() ? "" : ": " + correction.note());
    }

    private Still still(String link, String caption, String who) {
        return new Still(link, words.get(caption), words.get(caption) + ". " + who);
    }

    private String summary(Attempt attempt) {
        AttemptRow row = attempt.row();
        List<String> parts = new ArrayList<>();
        add(parts, naming.distance(figures, attempt));
        if (row.windMs() != null) {
            parts.add(words.format("wind_of", figures.signed(row.windMs(), 1, "m/s")));
        }
        if (row.effortClass() != null) {
            parts.add(naming.word("effort", row.effortClass()));
        }
        return String.join(" · ", parts);
    }

    private static void add(List<String> parts, String part) {
        if (!part.isEmpty()) {
            parts.add(part);
        }
    }

    private Optional<Video> video(Attempt attempt, String who) {
        String id = "video-" + attempt.number();
        return files.overlay(attempt.file().name()).map(link -> {
            List<Chapter> chapters = new ArrayList<>();
            for (ContactRow contact : attempt.contacts()) {
                if (contact.kind() != ContactKind.APPROACH && contact.touchdownS() != null) {
                    chapters.add(chapter(attempt, link, contact.touchdownS(), name(contact)));
                }
            }
            return new Video(
                    id,
                    link,
                    words.format("video_of", who),
                    plain(attempt.clipS()),
                    plain(attempt.row().fps()),
                    chapters);
        });
    }

    /** The chapter at an instant of an attempt; empty when it has no video. */
    Optional<Chapter> chapter(Attempt attempt, double atS, String label) {
        return files.overlay(attempt.file().name()).map(link -> chapter(attempt, link, atS, label));
    }

    private Chapter chapter(Attempt attempt, String link, double atS, String label) {
        // Half a frame later the frame nearest to the instant is shown.
        double shown =
                atS + (attempt.row().fps() == null ? 0 : 0.5 / attempt.row().fps());
        String place = attempt.file().mayBeSlow() ? link : link + "#t=" + plain(shown);
        return new Chapter("video-" + attempt.number(), place, plain(shown), label, figures.seconds(atS));
    }

    private static String plain(Double number) {
        return number == null ? "" : String.format(Locale.ROOT, "%.3f", number);
    }

    private List<Video> otherVideos(Attempt attempt, String who) {
        List<Video> videos = new ArrayList<>();
        for (ClipFile other : attempt.otherViews()) {
            String id = "video-" + attempt.number() + "-" + (videos.size() + 1);
            files.overlay(other.name())
                    .map(link -> new Video(id, link, words.format("other_video_of", who), "", "", List.of()))
                    .ifPresent(videos::add);
        }
        return videos;
    }

    private List<Still> stills(Attempt attempt, String who) {
        List<Still> stills = new ArrayList<>();
        for (ContactRow contact : attempt.contacts()) {
            for (StillInstant instant : StillInstant.values()) {
                String caption = instant == StillInstant.FLIGHT
                        ? naming.flight(contact.kind())
                        : name(contact) + ", " + naming.word("instant", instant);
                files.still(attempt.file().name(), contact.contact(), instant)
                        .map(link -> new Still(link, caption, caption + ". " + who))
                        .ifPresent(stills::add);
            }
        }
        return stills;
    }

    /** With its foot. */
    private String name(ContactRow contact) {
        String kind = contact.kind() == ContactKind.DRILL
                ? words.format("contact_number", contact.contact())
                : naming.word("contact", contact.kind());
        return contact.foot() == null || contact.foot() == Foot.BOTH
                ? kind
                : words.format("contact_foot", kind, naming.word("foot", contact.foot()));
    }

    private NumbersView contacts(Attempt attempt) {
        List<NumbersRow> rows = new ArrayList<>();
        for (ContactRow contact : attempt.contacts()) {
            if (contact.kind() == ContactKind.APPROACH) {
                continue;
            }
            List<String> cells = new ArrayList<>();
            for (String measure : List.of(
                    "support_time_s",
                    "leg_plant_touchdown_deg",
                    "knee_touchdown_deg",
                    "knee_toe_off_deg",
                    "trunk_touchdown_deg",
                    "trunk_toe_off_deg")) {
                cells.add(cell(attempt.intervals().ofContact(contact.contact(), measure)));
            }
            rows.add(new NumbersRow(name(contact), Attempt.isCorrected(contact), cells));
        }
        return new NumbersView(
                words.get("contacts_table"),
                words.get("column_contact"),
                List.of(
                        words.get("column_support"),
                        words.get("column_plant"),
                        words.get("column_knee_touchdown"),
                        words.get("column_knee_toe_off"),
                        words.get("column_trunk_touchdown"),
                        words.get("column_trunk_toe_off")),
                rows);
    }

    private NumbersView phases(Attempt attempt) {
        List<NumbersRow> rows = new ArrayList<>();
        for (PhaseRow phase : attempt.phases()) {
            if (phase.flightTimeS() == null && phase.distanceM() == null) {
                continue;
            }
            List<String> cells = new ArrayList<>();
            for (String measure :
                    List.of("distance_m", "share_pct", "flight_time_s", "vx_takeoff_ms", "takeoff_angle_deg")) {
                cells.add(cell(attempt.intervals().ofPhase(phase.phase().label(), measure)));
            }
            rows.add(new NumbersRow(naming.phase(phase.phase()), attempt.isCorrected(phase), cells));
        }
        return new NumbersView(
                words.get("phases_table"),
                words.get("column_phase"),
                List.of(
                        words.get("column_distance"),
                        words.get("column_share"),
                        words.get("column_flight"),
                        words.get("column_speed_takeoff"),
                        words.get("column_angle_takeoff")),
                rows);
    }

    private String cell(Optional<IntervalRow> row) {
        return row.map(figures::withPlusMinus).orElse("");
    }
}
