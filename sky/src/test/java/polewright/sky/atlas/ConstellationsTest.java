package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jastronomy.jsofa.JSOFA;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class ConstellationsTest {
    private final Constellations constellations = Constellations.bundled();

    @Test
    void thereAre88_withDifferentNames() {
        assertThat(constellations.all()).hasSize(88);
        assertThat(constellations.all().stream().map(Constellation::name).collect(Collectors.toSet()))
                .hasSize(88);
        assertThat(constellations.abbreviated("CrA"))
                .contains(new Constellation("CrA", "Corona Australis", "Coronae Australis"));
    }

    @ParameterizedTest
    // The test positions of Roman 1987 (PASP 99, 695), hours and degrees of B1950.0; as in astropy,
    // astropy/coordinates/tests/test_funcs.py, 013f65628fef.
    @CsvSource({
        "9.0, 65.0, UMa",
        "23.5, -20.0, Aqr",
        "5.12, 9.12, Ori",
        "9.4555, -19.9, Hya",
        "12.8888, 22.0, Com",
        "15.6687, -12.1234, Lib",
        "19.0, -40.0, CrA",
        "6.2222, -81.1234, Men",
    })
    void publishedTestPositions_lieInTheirConstellations(double raHours, double decDeg, String abbreviation) {
        JSOFA.SphericalCoordinate j2000 = JSOFA.jauFk45z(Math.toRadians(15 * raHours), Math.toRadians(decDeg), 1950.0);
        assertThat(constellations
                        .at(Angle.ofRadians(j2000.alpha), Angle.ofRadians(j2000.delta))
                        .abbreviation())
                .isEqualTo(abbreviation);
    }

    @Test
    void polesLieInUrsaMinorAndOctans() {
        assertThat(constellations.at(Angle.ZERO, Angle.QUARTER_TURN).name()).isEqualTo("Ursa Minor");
        assertThat(constellations.at(Angle.ZERO, Angle.QUARTER_TURN.negated()).name())
                .isEqualTo("Octans");
    }

    @Test
    void everyGreekLetteredStarLiesInItsConstellation_exceptRhoAquilae() {
        // Rho Aquilae crossed into Delphinus in 1992 by proper motion (common practice).
        Set<String> strayed = new TreeSet<>();
        for (NamedStar star : NamedStars.bundled().all()) {
            for (String text : star.designations()) {
                StarDesignation.ofAbbreviated(text)
                        .filter(designation -> GreekLetter.ofWord(designation.mark())
                                        .isPresent()
                                && Character.isLowerCase(designation.mark().charAt(0)))
                        .filter(designation -> !designation.constellation().equals(at(star)))
                        .ifPresent(designation -> strayed.add(text + " in " + at(star).abbreviation()));
            }
        }
        assertThat(strayed).containsExactly("rho Aql in Del");
    }

    @Test
    void numberedStarsOutsideTheirConstellationAreFew() {
        // Flamsteed's numbers are of 1712, the boundaries of 1930: 10 Ursae Majoris in Lynx is the brightest star cut
        // off by them (common practice).
        Set<String> strayed = new TreeSet<>();
        int numbered = 0;
        for (NamedStar star : NamedStars.bundled().all()) {
            for (String text : star.designations()) {
                StarDesignation designation =
                        StarDesignation.ofAbbreviated(text).orElse(null);
                if (designation != null && Character.isDigit(designation.mark().charAt(0))) {
                    numbered++;
                    if (!designation.constellation().equals(at(star))) {
                        strayed.add(text + " in " + at(star).abbreviation());
                    }
                }
            }
        }
        assertThat(strayed).contains("10 UMa in Lyn", "41 Lyn in UMa", "49 Ser in Her", "30 Ser in Lib");
        assertThat(strayed.size() / (double) numbered).isLessThan(0.025);
    }

    private Constellation at(NamedStar star) {
        return constellations.at(star.place().rightAscension(), star.place().declination());
    }

    @Test
    void everyPlaceHasAConstellation_andEachConstellationAPlace() {
        Random random = new Random(88);
        Set<Constellation> met = new HashSet<>();
        for (int i = 0; i < 100_000; i++) {
            met.add(constellations.at(
                    Angle.ofRadians(2 * Math.PI * random.nextDouble()),
                    Angle.ofRadians(Math.asin(2 * random.nextDouble() - 1))));
        }
        assertThat(met).hasSize(88);
    }

    @Test
    void declinationBeyondThePoleIsRefused() {
        assertThatThrownBy(() -> constellations.at(Angle.ZERO, Angle.ofDegrees(-100)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("declination -100 is beyond 90 degrees. Give right ascension first, then"
                        + " declination, in degrees.");
    }
}
