package polewright.bench.independent;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import org.junit.jupiter.api.Test;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** A simulator that shares a formula with the code it tests shares its errors. */
class IndependenceTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("polewright.bench.independent");
    private static final String TRUTH = "polewright.bench.independent.truth";

    /** The types in an entry and in the advised position of a star: values without a formula. */
    private static final Set<Class<?>> VALUE_TYPES =
            Set.of(Site.class, Weather.class, CatalogueStar.class, HourAnglePlace.class, RefractedDirection.class);

    @Test
    void truth_doesNotDependOnPolewright() {
        noClasses()
                .that()
                .resideInAPackage(TRUTH)
                .should()
                .dependOnClassesThat(
                        resideInAPackage("polewright..").and(DescribedPredicate.not(resideInAPackage(TRUTH))))
                .check(CLASSES);
    }

    @Test
    void person_sharesNoGeometryWithTheCodeUnderTest() {
        noClasses()
                .should()
                .dependOnClassesThat(DescribedPredicate.describe(
                        "work out places of the sky, or model a sighting", IndependenceTest::computesPlacesOrSightings))
                .check(CLASSES);
    }

    @Test
    void person_doesNotDependOnTheRehearsals() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("polewright.simulation..")
                .check(CLASSES);
    }

    private static boolean computesPlacesOrSightings(JavaClass used) {
        boolean isPlace = resideInAPackage("polewright.sky.place").test(used) && !isValueType(used);
        boolean isModel = resideInAPackage("polewright.alignment.sighting").test(used)
                && used.getSimpleName().endsWith("Model");
        return isPlace
                || isModel
                || used.getName().equals("polewright.mount.AxisPointing")
                || used.getName().equals("polewright.sky.body.Ephemeris");
    }

    private static boolean isValueType(JavaClass used) {
        return VALUE_TYPES.stream().anyMatch(used::isEquivalentTo);
    }
}
