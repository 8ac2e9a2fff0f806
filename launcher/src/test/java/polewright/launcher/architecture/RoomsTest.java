package polewright.launcher.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;
import polewright.mount.rig.MountKind;
import polewright.sky.broken.RuleBreakers;

/** Data flows one way: sky, axis and frames, night, rehearsal, app; each room knows only those before it. */
class RoomsTest {
    private static final ArchRule DOWNWARD = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("sky")
            .definedBy("polewright.sky..")
            .layer("axis")
            .definedBy("polewright.mount..")
            .layer("frames")
            .definedBy("polewright.image..")
            .layer("night")
            .definedBy("polewright.session..")
            .layer("rehearsal")
            .definedBy("polewright.simulation..")
            .layer("app")
            .definedBy("polewright.operations..")
            .whereLayer("axis")
            .mayOnlyBeAccessedByLayers("night", "rehearsal", "app")
            // Pixels know nothing of mounts, and an axis nothing of pixels: an attitude, of the sky, is all that
            // passes.
            .whereLayer("frames")
            .mayOnlyBeAccessedByLayers("night", "rehearsal", "app")
            .whereLayer("night")
            .mayOnlyBeAccessedByLayers("rehearsal", "app")
            .whereLayer("rehearsal")
            .mayOnlyBeAccessedByLayers("app")
            .whereLayer("app")
            .mayNotBeAccessedByAnyLayer()
            // The fixtures are tried one by one, without the other rooms.
            .withOptionalLayers(true);

    @Test
    void eachRoomKnowsOnlyThoseBeforeIt() {
        DOWNWARD.check(House.CLASSES);
    }

    @Test
    void everyRoomIsThere() {
        for (String room : new String[] {"sky", "axis", "frames", "night", "rehearsal", "app"}) {
            assertThat(House.CLASSES.that(resideInAPackage("polewright." + room + "..")))
                    .as(room)
                    .isNotEmpty();
        }
    }

    @Test
    void aSkyThatKnowsMountsIsCaught() {
        var broken = House.only(RuleBreakers.SkyThatKnowsMounts.class, MountKind.class);
        assertThat(DOWNWARD.evaluate(broken).hasViolation()).isTrue();
    }

    @Test
    void packagesDoNotDependOnEachOtherInCircles() {
        // The app's own package holds both its start and what its commands are handed; its sub-packages are below.
        slices().matching("polewright.(**)")
                .should()
                .beFreeOfCycles()
                .check(House.CLASSES.that(not(resideInAPackage("polewright.operations.."))));
    }

    @Test
    void theAppsPackagesDoNotDependOnEachOtherInCircles() {
        slices().matching("polewright.operations.(*)..")
                .should()
                .beFreeOfCycles()
                .check(House.CLASSES);
    }
}
