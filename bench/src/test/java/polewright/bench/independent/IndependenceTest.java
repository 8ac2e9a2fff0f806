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

    /** What an entry is made of, and how the advice says where a star is: values without a formula. */
    private static final Set<Class<?>> SPOKEN =
            Set.of(Site.class, Weather.class, CatalogueStar.class, HourAnglePlace.class, RefractedDirection.class);

    @Test
    void whatIsTrue_knowsNothingOfPolewright() {
        noClasses()
                .that()
                .resideInAPackage(TRUTH)
                .should()
                .dependOnClassesThat(
                        resideInAPackage("polewright..").and(DescribedPredicate.not(resideInAPackage(TRUTH))))
                .check(CLASSES);
    }

    @Test
    void thePerson_sharesNoGeometryWithTheCodeUnderTest() {
        noClasses()
                .should()
                .dependOnClassesThat(DescribedPredicate.describe(
                        "work out places of the sky, or model a sighting", IndependenceTest::worksOutPlacesOrSightings))
                .check(CLASSES);
    }

    @Test
    void thePerson_isNotTheOneOfTheRehearsals() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("polewright.simulation..")
                .check(CLASSES);
    }

    private static boolean worksOutPlacesOrSightings(JavaClass used) {
        boolean isPlace = resideInAPackage("polewright.sky.place").test(used) && !isSpoken(used);
        boolean isModel = resideInAPackage("polewright.alignment.sighting").test(used)
                && used.getSimpleName().endsWith("Model");
        return isPlace
                || isModel
                || used.getName().equals("polewright.mount.AxisPointing")
                || used.getName().equals("polewright.sky.body.Ephemeris");
    }

    private static boolean isSpoken(JavaClass used) {
        return SPOKEN.stream().anyMatch(used::isEquivalentTo);
    }
}
