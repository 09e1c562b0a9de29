package org.boardtopit.cli;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.djl.TorchEngine;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.ParameterException;

/** Starts the program. */
public final class Main {
    /** Set by the launcher. */
    private static final String HOME_PROPERTY = "boardtopit.home";

    private Main() {}

    public static void main(String[] args) {
        Console console = new Console(utf8(System.out), utf8(System.err), isTerminal());
        Optional<Path> home =
                Optional.ofNullable(System.getProperty(HOME_PROPERTY)).map(Path::of);
        System.exit(run(
                args,
                new Surroundings(
                        console, new TorchEngine(), new StageAssembly(), Optional.of(new JavaWorkers()), home)));
    }

    @SuppressWarnings(
            "SystemConsoleNull") // the launchers set jdk.console=java.base, with which it is null as before Java 22
    private static boolean isTerminal() {
        return System.console() != null && System.getenv("CI") == null;
    }

    private static PrintWriter utf8(PrintStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
    }

    /** The whole program but for the end of the process; gives the exit code. */
    static int run(String[] args, Surroundings surroundings) {
        Console console = surroundings.console();
        CommandLine commands = new CommandLine(new Root())
                .addSubcommand(new ProcessCommand(surroundings))
                .addSubcommand(new ReviewCommand(surroundings))
                .addSubcommand(new RemeasureCommand(surroundings))
                .addSubcommand(new CheckCommand(surroundings))
                .addSubcommand(new CompareCommand(surroundings))
                .addSubcommand(new SeasonCommand(surroundings))
                .addSubcommand(new CamerasCommand(surroundings))
                .addSubcommand(new NetworksCommand(surroundings))
                .addSubcommand(new BenchCommand(surroundings))
                .addSubcommand(new AccuracyCommand(surroundings))
                .addSubcommand(new WorkerCommand(surroundings))
                .addSubcommand(new TidyCommand(surroundings))
                .addSubcommand(new HelpCommand());
        commands.setOut(console.out());
        commands.setErr(console.err());
        commands.setUsageHelpAutoWidth(false);
        commands.setParameterExceptionHandler((e, arguments) -> refuseArguments(console, e));
        commands.setExecutionExceptionHandler((e, command, parsed) -> explain(console, e));
        try {
            return commands.execute(args);
        } catch (Error e) {
            return reportBug(console, e); // such as a native library that this machine lacks
        }
    }

    private static int refuseArguments(Console console, ParameterException e) {
        String name = e.getCommandLine().getCommandSpec().qualifiedName(" ");
        console.error(e.getMessage().replaceFirst("^Error: ", "") + " - see: " + name + " --help");
        return ExitCode.INPUT;
    }

    /** What the user can put right is one line; what is left is a bug, and whoever mends it needs the trace. */
    private static int explain(Console console, Exception e) {
        if (e instanceof InputException || e instanceof NetworkUnfitException) {
            console.error(e.getMessage());
            return ExitCode.INPUT;
        }
        if (e instanceof FileSystemException file) {
            String reason = file.getReason() == null ? file.getClass().getSimpleName() : file.getReason();
            console.error(file.getFile() + ": " + reason);
            return ExitCode.INPUT;
        }
        if (e instanceof IOException) {
            console.error(String.valueOf(e.getMessage()));
            return ExitCode.INPUT;
        }
        return reportBug(console, e);
    }

    private static int reportBug(Console console, Throwable bug) {
        console.error("a fault of the program; please report it with the lines below");
        bug.printStackTrace(console.err());
        console.err().flush();
        return ExitCode.BUG;
    }

    /** The command without a sub-command. */
    @Command(
            name = "boardtopit",
            mixinStandardHelpOptions = true,
            versionProvider = Version.class,
            synopsisSubcommandLabel = "COMMAND",
            description = {
                "Measures triple-jump attempts from video: a folder of clips in,",
                "tables and overlay videos out."
            },
            footer = {
                "",
                "Examples:",
                "  boardtopit process clips --out results",
                "  boardtopit process clips --meet meet.yaml --out results",
                "  boardtopit review results",
                "  boardtopit remeasure results",
                "  boardtopit check clips --meet meet.yaml --out results",
                "  boardtopit compare IMG_0412 IMG_0431 --out results",
                "  boardtopit cameras meet.yaml --out results",
                "  boardtopit help process",
                "",
                "Exit codes: 0 all clips measured, 1 some not measured, 2 wrong input,",
                "3 a fault of the program."
            })
    static final class Root implements Runnable {
        @CommandLine.Spec
        private CommandLine.Model.CommandSpec command;

        @Override
        public void run() {
            throw new ParameterException(
                    command.commandLine(),
                    "a command is missing: process, review, remeasure, check, compare, cameras, networks, bench, accuracy or tidy");
        }
    }
}
