package org.boardtopit;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchConditions.callMethod;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.boardtopit.models.BodyPoint;

/** Which package may know which: the arrows of docs/architecture.md, and one place each for the outside world. */
@AnalyzeClasses(packages = "org.boardtopit", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String BASE = "org.boardtopit.";

    /** In the order of the flow; each may know those before it. */
    private static final List<String> FLOW = List.of(
            "signal",
            "wording",
            "models",
            "body",
            "clips",
            "video",
            "ground",
            "subject",
            "pose",
            "motion",
            "contacts",
            "corrections",
            "fit",
            "phases",
            "measures",
            "frontal",
            "observations",
            "report",
            "season",
            "run",
            "accuracy",
            "check",
            "cli");

    @ArchTest
    static void everyPackageIsPartOfTheFlow(JavaClasses all) {
        Set<String> unknown = new TreeSet<>();
        for (JavaClass one : all) {
            if (!FLOW.contains(partOf(one))) {
                unknown.add(one.getPackageName());
            }
        }
        assertEquals(Set.of(), unknown);
    }

    @ArchTest
    static void packagesKnowOnlyThoseBeforeThemInTheFlow(JavaClasses all) {
        for (int i = 0; i < FLOW.size() - 1; i++) {
            List<String> later = new ArrayList<>();
            FLOW.subList(i + 1, FLOW.size()).forEach(part -> later.add(BASE + part + ".."));
            noClasses()
                    .that()
                    .resideInAPackage(BASE + FLOW.get(i) + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(later.toArray(String[]::new))
                    .allowEmptyShould(true)
                    .check(all);
        }
    }

    @ArchTest
    static final ArchRule PACKAGES_HAVE_NO_CYCLES =
            slices().matching("org.boardtopit.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule SIGNAL_KNOWS_JAVA_AND_LINEAR_ALGEBRA_ONLY = classes()
            .that()
            .resideInAPackage("org.boardtopit.signal..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("org.boardtopit.signal..", "java.lang..", "java.util..", "org.ejml..");

    @ArchTest
    static final ArchRule BODY_KNOWS_POINTS_ONLY = classes()
            .that()
            .resideInAPackage("org.boardtopit.body..")
            .should()
            .onlyDependOnClassesThat(resideInAnyPackage(
                            "org.boardtopit.body..", "org.boardtopit.signal..", "java.lang..", "java.util..")
                    .or(describe(
                            "body points", one -> one.getBaseComponentType().isEquivalentTo(BodyPoint.class))));

    @ArchTest
    static final ArchRule NATIVE_VIDEO_AND_PICTURES_STAY_IN_THEIR_ADAPTERS = noClasses()
            .that()
            .resideOutsideOfPackages(
                    "org.boardtopit.video.ffmpeg..",
                    "org.boardtopit.ground.opencv..",
                    "org.boardtopit.report.overlay.drawing..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.bytedeco..");

    @ArchTest
    static final ArchRule ADAPTERS_ARE_KNOWN_ONLY_TO_WHAT_PUTS_THE_STAGES_TOGETHER = noClasses()
            .that(not(resideInAnyPackage("org.boardtopit.run..", "org.boardtopit.cli..")
                    .or(resideInAnyPackage(
                            "org.boardtopit.video.ffmpeg..",
                            "org.boardtopit.ground.opencv..",
                            "org.boardtopit.report.overlay.drawing..",
                            "org.boardtopit.models.djl.."))))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "org.boardtopit.video.ffmpeg..",
                    "org.boardtopit.ground.opencv..",
                    "org.boardtopit.report.overlay.drawing..",
                    "org.boardtopit.models.djl..");

    @ArchTest
    static final ArchRule NETWORKS_ARE_COMPUTED_IN_ONE_PLACE = noClasses()
            .that()
            .resideOutsideOfPackage("org.boardtopit.models.djl..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("ai.djl..");

    @ArchTest
    static final ArchRule TABLES_ARE_READ_AND_WRITTEN_IN_ONE_PLACE_EACH = noClasses()
            .that()
            .resideOutsideOfPackages("org.boardtopit.clips", "org.boardtopit.report.tables")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.apache.commons.csv..");

    @ArchTest
    static final ArchRule WORKBOOKS_ARE_WRITTEN_IN_ONE_PLACE = noClasses()
            .that()
            .resideOutsideOfPackage("org.boardtopit.report.tables")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.dhatim..");

    @ArchTest
    static final ArchRule PAGES_ARE_LAID_OUT_IN_ONE_PLACE = noClasses()
            .that()
            .resideOutsideOfPackage("org.boardtopit.report.page")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.samskivert..");

    @ArchTest
    static final ArchRule PLOTS_KNOW_NOTHING_OF_WHAT_THEY_SHOW = classes()
            .that()
            .resideInAPackage("org.boardtopit.report.plot")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("org.boardtopit.report.plot", "java.lang..", "java.util..");

    @ArchTest
    static final ArchRule ONLY_THE_COMMAND_LINE_KNOWS_OF_COMMAND_LINES = noClasses()
            .that()
            .resideOutsideOfPackage("org.boardtopit.cli")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..");

    @ArchTest
    static final ArchRule ONLY_THE_COMMAND_LINE_PRINTS =
            noClasses().that(not(resideInAPackage("org.boardtopit.cli"))).should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule ONLY_THE_COMMAND_LINE_ENDS_THE_PROCESS = noClasses()
            .that(not(resideInAPackage("org.boardtopit.cli")))
            .should(callMethod(System.class, "exit", int.class)
                    .or(callMethod(Runtime.class, "exit", int.class))
                    .or(callMethod(Runtime.class, "halt", int.class)));

    private static String partOf(JavaClass one) {
        String name = one.getPackageName();
        if (!name.startsWith(BASE)) {
            return name;
        }
        String rest = name.substring(BASE.length());
        int dot = rest.indexOf('.');
        return dot < 0 ? rest : rest.substring(0, dot);
    }
}
