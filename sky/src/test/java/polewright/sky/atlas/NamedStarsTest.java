package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

class NamedStarsTest {
    private final NamedStars stars = NamedStars.bundled();

    @Test
    void containsAsManyStarsAsItsBuilderCounted() {
        assertThat(stars.all()).hasSize(3_429);
        assertThat(stars.all().stream().filter(NamedStar::motionKnown)).hasSize(1_074);
        assertThat(stars.all().get(0).label()).isEqualTo("Sirius");
    }

    @ParameterizedTest
    @CsvSource({
        "Vega, Vega",
        "vega, Vega",
        "' VEGA ', Vega",
        "alpha lyrae, Vega",
        "Alpha Lyr, Vega",
        "alp Lyr, Vega",
        "alf Lyr, Vega",
        "alLyr, Vega",
        "α Lyr, Vega",
        "α Lyrae, Vega",
        "3 Lyr, Vega",
        "HIP 91262, Vega",
        "hip91262, Vega",
        "HD 172167, Vega",
        "sigma octantis, Sigma Octantis",
        "Polaris Australis, Sigma Octantis",
        "sig Oct, Sigma Octantis",
        "σ Oct, Sigma Octantis",
        "pole star, Polaris",
        "alpha ursae minoris, Polaris",
        "beta canis majoris, Mirzam",
        "alpha boötis, Arcturus",
        "alpha bootis, Arcturus",
        "gamma And, Almach",
        "gam1 And, Almach",
        "gamma-1 Andromedae, Almach",
        "γ¹ And, Almach",
        "61 cyg, 61 Cyg",
        "Barnards star, Barnard's Star",
        "proxima centauri, Proxima",
        "alpha cen, Rigil Kentaurus",
    })
    void oneStarIsFoundByManySpellings(String asked, String label) {
        assertThat(stars.find(asked).map(NamedStar::label)).contains(label);
    }

    @Test
    void variableStarDesignations_writtenExactly_areNotReadAsGreekLetters() {
        assertThat(stars.find("BE Cet").orElseThrow().designations()).contains("9 Cet");
        assertThat(stars.find("be Cet").orElseThrow().designations()).contains("bet Cet");
    }

    @Test
    void everyNameFindsTheBrightestStarWithIt() {
        Map<String, NamedStar> brightest = new HashMap<>();
        stars.all().forEach(star -> star.names().forEach(name -> brightest.putIfAbsent(LookupKey.strict(name), star)));
        brightest.forEach((name, star) -> assertThat(stars.find(name)).as(name).contains(star));
    }

    @Test
    void everyDesignationFindsAStarWithIt() {
        for (NamedStar star : stars.all()) {
            for (String designation : star.designations()) {
                Optional<NamedStar> found = stars.find(designation);
                assertThat(found).as(designation).isPresent();
                assertThat(found.orElseThrow().designations()).contains(designation);
            }
        }
    }

    @Test
    void referenceStarsHaveTheirCataloguePlacesAndMotions() {
        for (String[] row : Authority.rows("reference-stars/stars.csv")) {
            CatalogueStar place = stars.named(row[0]).place();
            CatalogueStar expected = new CatalogueStar(
                    Angle.ofHours(sexagesimal(row[1])),
                    Angle.ofDegrees(sexagesimal(row[2])),
                    Double.parseDouble(row[3]),
                    Double.parseDouble(row[4]),
                    Double.parseDouble(row[5]),
                    Double.parseDouble(row[6]));
            // Sigma Octantis is from a later reduction here than in the reference list: 0.007″ and 0.6 mas a year
            // apart.
            assertThat(Separation.arcsec(place, expected)).as(row[0]).isLessThan(0.05);
            assertThat(place.properMotionRaMasPerYear())
                    .as(row[0])
                    .isCloseTo(expected.properMotionRaMasPerYear(), within(1.0));
            assertThat(place.properMotionDecMasPerYear())
                    .as(row[0])
                    .isCloseTo(expected.properMotionDecMasPerYear(), within(1.0));
            assertThat(place.parallaxMas()).as(row[0]).isCloseTo(expected.parallaxMas(), within(1.0));
            assertThat(place.radialVelocityKmPerSecond())
                    .as(row[0])
                    .isCloseTo(expected.radialVelocityKmPerSecond(), within(0.5));
        }
    }

    private static double sexagesimal(String text) {
        String[] parts = text.split(" ", -1);
        double value = Math.abs(Double.parseDouble(parts[0]))
                + Double.parseDouble(parts[1]) / 60
                + Double.parseDouble(parts[2]) / 3600;
        return text.startsWith("-") ? -value : value;
    }

    @ParameterizedTest
    // Within 0.04° and 0.1 magnitudes of the Bright Star Catalogue, 5th ed. (brettonw/YaleBrightStarCatalog,
    // bsc5-short.json, abffb3b7223a); Acrux is both stars together.
    @CsvSource({
        "Sirius, 101.3, -16.7, -1.46",
        "Canopus, 96.0, -52.7, -0.74",
        "Achernar, 24.4, -57.2, 0.46",
        "Acrux, 186.65, -63.1, 0.8",
        "Betelgeuse, 88.8, 7.4, 0.4",
        "Rigel, 78.6, -8.2, 0.13",
        "Capella, 79.2, 46.0, 0.08",
        "Altair, 297.7, 8.9, 0.76",
        "Fomalhaut, 344.4, -29.6, 1.16",
        "Alpha Centauri, 219.9, -60.8, -0.1",
        "Eta Orionis, 81.1, -2.4, 3.35",
        "Mizar, 201.0, 54.9, 2.2",
    })
    void wellKnownStarsHaveTheRightPosition(String name, double raDeg, double decDeg, double magnitude) {
        NamedStar star = stars.named(name);
        assertThat(star.place().rightAscension().degrees()).isCloseTo(raDeg, within(0.1));
        assertThat(star.place().declination().degrees()).isCloseTo(decDeg, within(0.1));
        assertThat(star.magnitude()).isCloseTo(magnitude, within(0.11));
        assertThat(star.motionKnown()).isTrue();
    }

    @Test
    void clustersGalaxiesAndEmptyPositionsAreNotStars() {
        for (String name : new String[] {
            "Andromeda Galaxy", "Praesepe Cluster", "Orion Nebula", "Galactic Center", "Gal.Pole", "Zero2000", "Apex"
        }) {
            assertThat(stars.find(name)).as(name).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "Betelguse, Betelgeuse",
        "Arctrus, Arcturus",
        "polares, Polaris",
        "Acherner, Achernar",
        "Rigel Kent, Rigel Kentaurus",
        "alpha lyre, Alpha Lyrae",
        "sigma octans star, ",
    })
    void misspelledNamesSuggestTheRightOne(String typed, String meant) {
        if (meant == null) {
            assertThat(stars.near(typed)).isEmpty();
        } else {
            assertThat(stars.near(typed).get(0)).isEqualTo(meant);
        }
    }

    @Test
    void unknownNameIsRefused_withSimilarNames() {
        assertThatThrownBy(() -> stars.named("Betelguse"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no star is called 'Betelguse'. Did you mean Betelgeuse, Beteigeuse? If not, give a"
                        + " designation such as alp Lyr.");
        assertThatThrownBy(() -> stars.named("qqqqqqqq"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no star is called 'qqqqqqqq'. Give a name such as Vega, a designation such as alp Lyr or"
                        + " 61 Cyg, or a number such as HIP 91262.");
        assertThatThrownBy(() -> stars.named(" "))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no star is called ''. Give a name such as Vega, a designation such as alp Lyr or 61 Cyg,"
                        + " or a number such as HIP 91262.");
    }

    /** Pages and files bring many names: each wrong one is compared with ten thousand spellings. */
    @Test
    void misspeltName_costsLittleMemory() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        stars.near("Betelguse");
        long before = threads.getCurrentThreadAllocatedBytes();
        stars.near("Betelguse");
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(2_000_000);
    }
}
