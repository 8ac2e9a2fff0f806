package polewright.launcher.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.lang.ArchRule;
import javax.imageio.ImageReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.launcher.Main;
import polewright.sky.broken.RuleBreakers;

/** Each library is used in one package, and could be replaced there. */
class LibrariesTest {
    private static final ArchRule STREAMS_IN_MAIN =
            noClasses().that().doNotHaveFullyQualifiedName(Main.class.getName()).should(ACCESS_STANDARD_STREAMS);

    private static ArchRule onlyIn(String library, String... packages) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(packages)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library + "..");
    }

    @ParameterizedTest
    @CsvSource({
        "org.jastronomy, polewright.sky..",
        "org.orekit, polewright.sky.magnetic",
        "org.jdbi, polewright.store",
        "org.flywaydb, polewright.store",
        "org.sqlite, polewright.store",
        "java.sql, polewright.store",
        "me.tongfei, polewright.cli",
        "io.javalin, polewright.web..",
        "com.google.zxing, polewright.web.access",
        "com.openhtmltopdf, polewright.report.page",
        "com.drew, polewright.image.decode",
        "com.twelvemonkeys, polewright.image.decode",
    })
    void library_isUsedInOnePackageOnly(String library, String name) {
        onlyIn(library, name).check(ProductionClasses.CLASSES);
        assertThat(ProductionClasses.CLASSES.stream()
                        .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                        .anyMatch(d -> d.getTargetClass().getPackageName().startsWith(library)))
                .as("%s is used at all", library)
                .isTrue();
    }

    @Test
    void fits_isReadByTheDecoder_andWrittenByTheSimulation() {
        onlyIn("nom.tam", "polewright.image.decode", "polewright.simulation.fits")
                .check(ProductionClasses.CLASSES);
    }

    @Test
    void json_isReadAndWrittenInFourPackages() {
        onlyIn(
                        "com.fasterxml",
                        "polewright.session.jsonl",
                        "polewright.report.json",
                        "polewright.cli",
                        "polewright.operations.device",
                        "polewright.operations.practice")
                .check(ProductionClasses.CLASSES);
    }

    /** Its converters read typed values, which the pages use as well. */
    @Test
    void commandLineLibrary_isUsedForCommandsAndTypedValues() {
        onlyIn("picocli", "polewright.cli", "polewright.operations.input", "polewright.launcher")
                .check(ProductionClasses.CLASSES);
    }

    /** A plan to print, and the pages at the telescope. */
    @Test
    void templates_areRenderedWherePagesAreMade() {
        onlyIn("gg.jte", "polewright.report.page", "polewright.web").check(ProductionClasses.CLASSES);
    }

    /** Pictures are read in one place and drawn in another. */
    @Test
    void images_areReadOnlyByTheDecoder() {
        onlyIn("javax.imageio", "polewright.image.decode", "polewright.operations.picture")
                .check(ProductionClasses.CLASSES);
        onlyIn("java.awt", "polewright.image.decode", "polewright.operations.picture")
                .check(ProductionClasses.CLASSES);
        noClasses()
                .that()
                .resideOutsideOfPackage("polewright.image.decode")
                .should()
                .dependOnClassesThat()
                .areAssignableTo(ImageReader.class)
                .check(ProductionClasses.CLASSES);
    }

    @Test
    void libraryElsewhere_isCaught() {
        var broken = ProductionClasses.only(RuleBreakers.LibraryUser.class);
        assertThat(onlyIn("picocli", "polewright.cli").evaluate(broken).hasViolation())
                .isTrue();
        assertThat(onlyIn("com.fasterxml", "polewright.report.json")
                        .evaluate(broken)
                        .hasViolation())
                .isTrue();
    }

    @Test
    void onlyMain_usesTheStandardStreams() {
        STREAMS_IN_MAIN.check(ProductionClasses.CLASSES);
    }

    @Test
    void printingElsewhere_isCaught() {
        assertThat(STREAMS_IN_MAIN
                        .evaluate(ProductionClasses.only(RuleBreakers.Printer.class))
                        .hasViolation())
                .isTrue();
    }
}
