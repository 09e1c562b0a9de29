package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.boardtopit.check.CheckedClip;
import org.boardtopit.check.ClipChecker;
import org.boardtopit.check.EveningCheck;
import org.boardtopit.check.Finding;
import org.boardtopit.check.Finding.Weight;
import org.boardtopit.check.NightForecast;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.ListWarning;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkTiming;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.run.Progress;
import org.boardtopit.video.ffmpeg.FfmpegClipProbe;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Looks at everything the evening before: sheets, clips, cameras, disk and time. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Looks at clips and sheets before the night, in about a minute.",
        description = {
            "",
            "Joins the sheets with the clips, opens every clip, compares it with the",
            "picture of its camera, and estimates time and disk. Problems come first,",
            "a line each with what would be right, then a table. Writes nothing.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit check clips --meet meet.yaml",
            "    boardtopit check clips --meet meet.yaml --out results --before 06:30",
            "",
            "Exit codes: 0 nothing is in the way, 1 there are problems, 2 wrong input,",
            "3 a fault of the program."
        })
final class CheckCommand implements Callable<Integer> {
    /** Takes some seconds; on the machines at hand within a tenth of the rate of a long run. */
    private static final int PICTURES_PER_WORKER = 30;

    private static final int MOST_NAMED = 3;

    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("H:mm", Locale.ROOT);

    private final Surroundings surroundings;
    private final Clock clock;

    @Spec
    private CommandSpec command;

    @Mixin
    private ClipOptions inputs;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where the results are to go: is there disk enough? Nothing is written.")
    private Path out;

    @Option(names = "--before", paramLabel = "H:MM", description = "Says whether a run started now ends before then.")
    private String before;

    @Option(names = "--no-overlay", description = "The run is to make no overlay videos and no stills.")
    private boolean noOverlay;

    @Mixin
    private LandmarkOptions landmarks;

    CheckCommand(Surroundings surroundings) {
        this(surroundings, Clock.system(ZoneId.systemDefault()));
    }

    CheckCommand(Surroundings surroundings, Clock clock) {
        this.surroundings = surroundings;
        this.clock = clock;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        LocalDateTime now = LocalDateTime.now(clock);
        LocalDateTime limit = limit(now);
        MeetSheet meet = inputs.meet();
        RuleSetReader.of(meet);
        RunSettings settings = landmarks.settings(meet.settings());
        ClipFolder folder = out == null
                ? ClipFolder.list(inputs.clips(), meet.inputFiles())
                : ClipFolder.list(inputs.clips(), out, meet.inputFiles());
        ClipList list = ClipList.join(folder, meet);
        NetworkTiming timing = landmarks
                .networks()
                .store(surroundings.engine())
                .time(settings.network(), settings.threads(), PICTURES_PER_WORKER);
        List<Finding> findings = new ArrayList<>();
        List<CheckedClip> checked = look(list, meet, settings.threads(), findings);
        NightForecast forecast = NightForecast.of(
                checked, timing.picturesPerSecond(), Look.of(settings.effort()).size(), !noOverlay);
        long free = out == null ? Long.MAX_VALUE : freeBytes(out);
        addNight(findings, forecast, now, limit, free);
        report(findings, checked, list);
        night(forecast, timing, now, free);
        boolean problems = findings.stream().anyMatch(f -> f.weight() == Weight.PROBLEM);
        return problems ? ExitCode.SOME_NOT_MEASURED : ExitCode.DONE;
    }

    /** Null when no hour is given; the hour that comes next. */
    private LocalDateTime limit(LocalDateTime now) {
        if (before == null) {
            return null;
        }
        try {
            LocalDateTime today = now.toLocalDate().atTime(LocalTime.parse(before, HOUR));
            return today.isAfter(now) ? today : today.plusDays(1);
        } catch (DateTimeParseException e) {
            throw new ParameterException(
                    command.commandLine(), "--before must be an hour such as 6:30 or 22:00, was '" + before + "'", e);
        }
    }

    private List<CheckedClip> look(ClipList list, MeetSheet meet, int threads, List<Finding> findings) {
        ProgressBar bar = new ProgressBar(surroundings.console().out());
        try (OpenCameraPictures pictures = new OpenCameraPictures(meet.cameras())) {
            findings.addAll(pictures.findings());
            list.warnings().forEach(w -> findings.add(ofSheet(w)));
            ClipChecker checker = new ClipChecker(meet, list.views(), new FfmpegClipProbe(1), pictures);
            int count = list.clips().size();
            List<CheckedClip> checked = new EveningCheck(checker, threads).check(list.clips(), (number, clip) -> {
                if (surroundings.console().terminal()) {
                    double share = (double) number / count;
                    bar.show(new Progress(number, count, clip.fileName(), "looking", share, Double.NaN));
                }
            });
            checked.forEach(c -> findings.addAll(c.findings()));
            findings.addAll(EveningCheck.twins(list.clips()));
            return checked;
        } finally {
            bar.clear();
        }
    }

    /** A row whose clip is not there is an attempt that will be missing in the morning; the rest is measured all the same. */
    private static Finding ofSheet(ListWarning warning) {
        boolean missing = warning.kind() == ListWarning.Kind.ROW_WITHOUT_CLIP;
        return new Finding(
                missing ? Weight.PROBLEM : Weight.REMARK,
                "",
                warning.text(),
                missing ? "copy it, or take its row out" : "");
    }

    private static long freeBytes(Path folder) throws IOException {
        Path there = folder.toAbsolutePath().normalize();
        while (!Files.exists(there) && there.getParent() != null) {
            there = there.getParent();
        }
        return Files.getFileStore(there).getUsableSpace();
    }

    private void addNight(
            List<Finding> findings, NightForecast forecast, LocalDateTime now, LocalDateTime limit, long free) {
        if (free < forecast.needBytes()) {
            findings.add(new Finding(
                    Weight.PROBLEM,
                    out.toString(),
                    "up to " + size(forecast.needBytes()) + " are needed and " + size(free) + " are free",
                    "make room, choose another disk, or leave the overlays out with --no-overlay"));
        }
        if (limit == null) {
            return;
        }
        LocalDateTime end = now.plusSeconds(Math.round(forecast.seconds()));
        LocalDateTime latest = now.plusSeconds(Math.round(forecast.mostS()));
        if (end.isAfter(limit)) {
            findings.add(new Finding(
                    Weight.PROBLEM,
                    "",
                    "a run started now ends at about " + hour(end, now) + ", not before " + hour(limit, now),
                    "--effort quick takes about half the time, --no-overlay a little less; or leave clips out"));
        } else if (latest.isAfter(limit)) {
            findings.add(new Finding(
                    Weight.REMARK,
                    "",
                    "a run started now ends at about " + hour(end, now) + ", perhaps not before " + hour(limit, now),
                    "start it soon and leave the machine alone"));
        }
    }

    private static String hour(LocalDateTime time, LocalDateTime now) {
        long days = java.time.temporal.ChronoUnit.DAYS.between(now.toLocalDate(), time.toLocalDate());
        return HOUR.format(time) + (days > 1 ? " in " + days + " days" : "");
    }

    private void report(List<Finding> findings, List<CheckedClip> checked, ClipList list) {
        list(findings, Weight.PROBLEM, "problem", "problems");
        list(findings, Weight.REMARK, "remark", "remarks");
        new CheckTable(checked).lines().forEach(this::say);
        long unable = checked.stream().filter(c -> !c.willBeMeasured()).count();
        long refused = checked.stream().filter(c -> c.consent() == Consent.NO).count();
        say("");
        say(checked.size() + (checked.size() == 1 ? " clip: " : " clips: ") + (checked.size() - unable)
                + " can be measured" + (unable > refused ? ", " + (unable - refused) + " cannot" : "")
                + (refused > 0 ? ", " + refused + " withheld (consent: no)" : "")
                + (list.skipped().isEmpty() ? "" : "; " + list.skipped().size() + " other files passed over"));
    }

    private void list(List<Finding> findings, Weight weight, String one, String many) {
        List<String> lines =
                lines(findings.stream().filter(f -> f.weight() == weight).toList());
        if (lines.isEmpty()) {
            if (weight == Weight.PROBLEM) {
                say("No problems.");
                say("");
            }
            return;
        }
        say(lines.size() + " " + (lines.size() == 1 ? one : many) + ":");
        lines.forEach(line -> say("  " + line));
        say("");
    }

    /** The same remark on many clips is one line. */
    private static List<String> lines(List<Finding> findings) {
        Map<List<String>, List<Finding>> alike = new LinkedHashMap<>();
        for (Finding finding : findings) {
            // A problem has a line of its own, whatever others have.
            String apart = finding.weight() == Weight.PROBLEM ? finding.place() : "";
            alike.computeIfAbsent(List.of(apart, finding.what(), finding.right()), k -> new ArrayList<>())
                    .add(finding);
        }
        return alike.values().stream().map(CheckCommand::line).toList();
    }

    private static String line(List<Finding> alike) {
        Finding first = alike.get(0);
        if (alike.size() == 1) {
            return first.line();
        }
        String places = alike.stream().limit(MOST_NAMED).map(Finding::place).collect(Collectors.joining(", "));
        int more = alike.size() - MOST_NAMED;
        return new Finding(
                        first.weight(),
                        places + (more > 0 ? " and " + more + " more" : ""),
                        first.what(),
                        first.right())
                .line();
    }

    private void night(NightForecast forecast, NetworkTiming timing, LocalDateTime now, long free) {
        say(String.format(
                Locale.ROOT,
                "Time: about %s for %d frames (%s to %s); a run started now ends at about %s",
                Spoken.forecast(forecast.seconds()),
                forecast.frames(),
                Spoken.forecast(forecast.leastS()),
                Spoken.forecast(forecast.mostS()),
                hour(now.plusSeconds(Math.round(forecast.seconds())), now)));
        say(String.format(
                Locale.ROOT,
                "      from %d pictures timed just now (%.1f a second with %d threads); more if the machine does other work",
                timing.pictures(),
                timing.picturesPerSecond(),
                timing.workers()));
        say("Disk: up to " + size(forecast.needBytes())
                + (out == null ? "; --out says whether that is free" : ", " + size(free) + " are free in " + out));
    }

    private static String size(long bytes) {
        return bytes < 950_000_000
                ? String.format(Locale.ROOT, "%.0f MB", Math.ceil(bytes / 1e6))
                : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
    }

    private void say(String line) {
        surroundings.console().say(line);
    }
}
