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

/** Each library is used in the room that needs it, and could be changed there. */
class LibrariesTest {
    private static final ArchRule STREAMS_IN_MAIN =
            noClasses().that().doNotHaveFullyQualifiedName(Main.class.getName()).should(ACCESS_STANDARD_STREAMS);

    private static ArchRule onlyIn(String library, String... rooms) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(rooms)
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
    void aLibraryKeepsToItsRoom(String library, String room) {
        onlyIn(library, room).check(House.CLASSES);
        assertThat(House.CLASSES.stream()
                        .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                        .anyMatch(d -> d.getTargetClass().getPackageName().startsWith(library)))
                .as("%s is used at all", library)
                .isTrue();
    }

    @Test
    void fitsIsReadWhereFramesAreDecodedAndWrittenWhereTheyAreRehearsed() {
        onlyIn("nom.tam", "polewright.image.decode", "polewright.simulation.fits")
                .check(House.CLASSES);
    }

    @Test
    void jsonIsReadAndWrittenAtTheEdges() {
        onlyIn(
                        "com.fasterxml",
                        "polewright.session.jsonl",
                        "polewright.report.json",
                        "polewright.cli",
                        "polewright.operations.device",
                        "polewright.operations.practice")
                .check(House.CLASSES);
    }

    /** Its converters read typed values, which the pages use as well. */
    @Test
    void theCommandLineLibraryIsUsedWhereTypedValuesAreReadAndCommandsAre() {
        onlyIn("picocli", "polewright.cli", "polewright.operations.input", "polewright.launcher")
                .check(House.CLASSES);
    }

    /** A plan to print, and the pages at the telescope. */
    @Test
    void templatesAreFilledWherePagesAreMade() {
        onlyIn("gg.jte", "polewright.report.page", "polewright.web").check(House.CLASSES);
    }

    /** Pictures are read in one place and drawn in another. */
    @Test
    void picturesAreReadWhereFramesAreDecoded() {
        onlyIn("javax.imageio", "polewright.image.decode", "polewright.operations.picture")
                .check(House.CLASSES);
        onlyIn("java.awt", "polewright.image.decode", "polewright.operations.picture")
                .check(House.CLASSES);
        noClasses()
                .that()
                .resideOutsideOfPackage("polewright.image.decode")
                .should()
                .dependOnClassesThat()
                .areAssignableTo(ImageReader.class)
                .check(House.CLASSES);
    }

    @Test
    void aStrayLibraryIsCaught() {
        var broken = House.only(RuleBreakers.LibraryUser.class);
        assertThat(onlyIn("picocli", "polewright.cli").evaluate(broken).hasViolation())
                .isTrue();
        assertThat(onlyIn("com.fasterxml", "polewright.report.json")
                        .evaluate(broken)
                        .hasViolation())
                .isTrue();
    }

    @Test
    void onlyTheProcessItselfTouchesTheStandardStreams() {
        STREAMS_IN_MAIN.check(House.CLASSES);
    }

    @Test
    void strayPrintingIsCaught() {
        assertThat(STREAMS_IN_MAIN
                        .evaluate(House.only(RuleBreakers.Printer.class))
                        .hasViolation())
                .isTrue();
    }
}
