package polewright.launcher.architecture;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Random;
import org.junit.jupiter.api.Test;
import polewright.sky.broken.RuleBreakers;

/**
 * The modules below the application are pure: time, zone and random numbers come in as arguments; files, networks and
 * databases not at all.
 */
class PureModulesTest {
    private static final String[] PURE = {
        "polewright.sky..",
        "polewright.image..",
        "polewright.mount..",
        "polewright.alignment..",
        "polewright.drawing..",
        "polewright.session..",
        "polewright.planning.."
    };
    private static final String[] VALUES = {"polewright.sky..", "polewright.mount..", "polewright.image.."};
    // Tables bundled in the jar, and the bytes of a picture that the caller read.
    private static final String[] READING_MEMORY = {
        "polewright.sky.atlas..",
        "polewright.sky.body..",
        "polewright.sky.magnetic..",
        "polewright.image.decode..",
        "polewright.session.jsonl.."
    };

    private static final ArchRule NO_CLOCK = noClasses()
            .that()
            .resideOutsideOfPackages(ProductionClasses.APPLICATION)
            .should()
            .callMethodWhere(target(owner(resideInAPackage("java.time.."))).and(target(name("now"))))
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(ZoneId.class, "systemDefault")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Clock.class);

    private static final ArchRule NO_DICE = noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .callMethod(Math.class, "random")
            .orShould()
            .dependOnClassesThat()
            .resideInAPackage("java.util.random..")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Random.class);

    private static final ArchRule NO_FILES = noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.nio.channels..", "java.net..", "java.sql..", "javax.sql..");

    private static final ArchRule STREAMS_OVER_MEMORY_ONLY = noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .and()
            .resideOutsideOfPackages(READING_MEMORY)
            .should()
            .dependOnClassesThat()
            .resideInAPackage("java.io..");

    private static final ArchRule NO_FILE_STREAMS = noClasses()
            .that()
            .resideInAnyPackage(READING_MEMORY)
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.io\\.(File|RandomAccess).*");

    // A FieldCollector gathers the stars of one query, JpegBits and JpegScans walk through the data of one picture,
    // PointMoments adds up the pixels of one star, a RowScaler has the buffers of one pass over a frame. The others
    // are the working figures of one pointing fit. None of them outlives its result.
    private static final ArchRule VALUES_DO_NOT_CHANGE = fields().that()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(VALUES)
            .and()
            .areDeclaredInClassesThat()
            .haveNameNotMatching("polewright\\.(sky\\.atlas\\.FieldCollector|image\\.decode\\.Jpeg(Bits|Scans)"
                    + "|image\\.star\\.(PointMoments|BackgroundMesh\\$RowScaler)"
                    + "|mount\\.pointing\\.(PointingDescent|ForkDirection|SkySlopes))")
            .should()
            .beFinal();

    @Test
    void onlyApplicationModules_readTheClock() {
        NO_CLOCK.check(ProductionClasses.CLASSES);
    }

    @Test
    void readingClockOrZone_isCaught() {
        assertCaught(NO_CLOCK, RuleBreakers.ClockReader.class);
        assertCaught(NO_CLOCK, RuleBreakers.ZoneReader.class);
    }

    @Test
    void pureModules_useNoRandomNumbers() {
        NO_DICE.check(ProductionClasses.CLASSES);
    }

    @Test
    void randomNumbers_areCaught() {
        assertCaught(NO_DICE, RuleBreakers.DiceRoller.class);
    }

    @Test
    void pureModules_useNoFileNetworkOrDatabase() {
        NO_FILES.check(ProductionClasses.CLASSES);
        NO_FILE_STREAMS.check(ProductionClasses.CLASSES);
    }

    @Test
    void streams_readOnlyBundledTablesAndGivenBytes() {
        STREAMS_OVER_MEMORY_ONLY.check(ProductionClasses.CLASSES);
    }

    @Test
    void file_isCaught() {
        assertCaught(NO_FILES, RuleBreakers.FileReader.class);
    }

    @Test
    void streamElsewhere_isCaught() {
        assertCaught(STREAMS_OVER_MEMORY_ONLY, RuleBreakers.Printer.class);
    }

    @Test
    void valuesOfSkyMountAndImage_doNotChange() {
        VALUES_DO_NOT_CHANGE.check(ProductionClasses.CLASSES);
    }

    @Test
    void mutableField_isCaught() {
        assertCaught(VALUES_DO_NOT_CHANGE, RuleBreakers.Changeable.class);
    }

    private static void assertCaught(ArchRule rule, Class<?> broken) {
        assertThat(rule.evaluate(ProductionClasses.only(broken)).hasViolation()).isTrue();
    }
}
