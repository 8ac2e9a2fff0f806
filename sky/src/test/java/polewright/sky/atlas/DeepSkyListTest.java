package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;

class DeepSkyListTest {
    private final DeepSkyList list = DeepSkyList.bundled();

    @Test
    void containsAsManyObjectsAsItsBuilderCounted() {
        assertThat(list.all()).hasSize(15_805);
    }

    @Test
    void all110MessierObjectsAreThere_inOrder() {
        for (int number = 1; number <= 110; number++) {
            DeepSkyObject object = list.named("M " + number);
            assertThat(object.designations().get(0)).isEqualTo("M " + number);
            assertThat(list.all().get(number - 1)).isEqualTo(object);
        }
    }

    @ParameterizedTest
    @CsvSource({"M 31", "m31", "Messier 31", "NGC 224", "ngc224", "NGC 0224", "Andromeda Galaxy", "andromeda galaxy"})
    void oneGalaxyIsFoundByManySpellings(String asked) {
        assertThat(list.find(asked).map(DeepSkyObject::label)).contains("M 31 (Andromeda Galaxy)");
    }

    @ParameterizedTest
    // Within 0.1° and 0.4 magnitudes of OpenNGC (database_files, 17397545d4e6), except that NGC 7000 lies 0.2° further
    // north there.
    @CsvSource({
        "M 31, SPIRAL_GALAXY, 10.68, 41.27, 3.4",
        "M 13, GLOBULAR_CLUSTER, 250.42, 36.46, 5.8",
        "M 42, STAR_FORMING_REGION, 83.82, -5.39, 4.0",
        "M 45, OPEN_CLUSTER, 56.75, 24.12, 1.4",
        "M 57, PLANETARY_NEBULA, 283.40, 33.03, 8.8",
        "M 87, ELLIPTICAL_GALAXY, 187.71, 12.39, 8.6",
        "M 1, SUPERNOVA_REMNANT, 83.63, 22.01, 8.4",
        "NGC 5139, GLOBULAR_CLUSTER, 201.70, -47.48, 5.3",
        "NGC 104, GLOBULAR_CLUSTER, 6.02, -72.08, 4.0",
        "NGC 7000, BRIGHT_NEBULA, 314.7, 44.33, 4.0",
    })
    void wellKnownObjectsHaveTheRightTypeAndPosition(
            String name, DeepSkyKind kind, double raDeg, double decDeg, double magnitude) {
        DeepSkyObject object = list.named(name);
        assertThat(object.kind()).isEqualTo(kind);
        assertThat(object.place().rightAscension().degrees()).isCloseTo(raDeg, within(0.1));
        assertThat(object.place().declination().degrees()).isCloseTo(decDeg, within(0.1));
        assertThat(object.magnitude().orElseThrow()).isCloseTo(magnitude, within(0.3));
    }

    @Test
    void sizesAreInArcminutes_longestFirst() {
        DeepSkyObject andromeda = list.named("M 31");
        assertThat(andromeda.majorArcmin().orElseThrow()).isCloseTo(189.1, within(1e-9));
        assertThat(andromeda.minorArcmin().orElseThrow()).isCloseTo(61.7, within(1e-9));
        for (DeepSkyObject object : list.all()) {
            if (object.majorArcmin().isPresent()) {
                assertThat(object.minorArcmin().orElseThrow())
                        .as(object.label())
                        .isLessThanOrEqualTo(object.majorArcmin().orElseThrow());
            }
        }
    }

    @Test
    void unknownMagnitudesAreEmpty() {
        assertThat(list.named("C 99").magnitude()).isEmpty();
        assertThat(list.all())
                .allSatisfy(object -> object.magnitude()
                        .ifPresent(magnitude -> assertThat(magnitude).isBetween(0.1, 20.0)));
    }

    @ParameterizedTest
    @CsvSource({
        "Rosette, Rosette Nebula",
        "horsehead nebula, Horsehead Nebula",
        "omega centauri, Omega Centauri",
        "seven sisters, Seven Sisters",
        "whirlpool, Whirlpool Galaxy",
    })
    void commonNamesAreKnown(String asked, String name) {
        assertThat(list.named(asked).names()).contains(name);
    }

    @Test
    void unknownNameIsRefused_withSimilarNames() {
        assertThatThrownBy(() -> list.named("Andromida Galaxy"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no deep-sky object is called 'Andromida Galaxy'. Did you mean Andromeda Galaxy? If not,"
                        + " give a catalogue and number such as NGC 224.");
        assertThatThrownBy(() -> list.named("M 111"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no deep-sky object is called 'M 111'. Give a catalogue and number such as M 31, NGC 224"
                        + " or IC 434.");
    }
}
