package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.sky.InputRefused;

class MotionStarsTest {
    @TempDir
    Path folder;

    private List<MotionStars.Star> read(String... lines) throws IOException {
        return MotionStars.read(Files.write(folder.resolve("list.txt"), List.of(lines)));
    }

    @Test
    void rowsOfOneStar_becomeOneStarWithAllNames() throws IOException {
        List<MotionStars.Star> stars = read(
                "# comment",
                "Dabih,beCap,ICRS,20,21,00.67,-14,46,52.9,44.92,7.38,-19.0,9.98,3.08,0,0",
                "Dabih Major,be-1Cap,ICRS,20,21,00.67,-14,46,52.9,44.92,7.38,-19.0,9.98,3.08,0,0");
        assertThat(stars).hasSize(1);
        assertThat(stars.get(0).names()).containsExactly("Dabih", "Dabih Major");
        assertThat(stars.get(0).designations()).containsExactly("bet Cap", "bet1 Cap");
        assertThat(stars.get(0).place().declination().degrees()).isCloseTo(-14.781361, within(1e-6));
        assertThat(stars.get(0).place().radialVelocityKmPerSecond()).isEqualTo(-19.0);
        assertThat(stars.get(0).place().parallaxMas()).isEqualTo(9.98);
    }

    @Test
    void southernDeclinationOfZeroDegrees_keepsItsSign() throws IOException {
        assertThat(read("X,etAqr,ICRS,22,35,21.38,-00,07,03.0,0,0,0,-5.0,4.04,0,0")
                        .get(0)
                        .place())
                .satisfies(place -> {
                    assertThat(place.declination().degrees()).isCloseTo(-0.1175, within(1e-9));
                    assertThat(place.parallaxMas()).isZero();
                });
    }

    @Test
    void nonStars_areLeftOut() throws IOException {
        assertThat(read(
                        "Andromeda Galaxy,M31,ICRS,00,42,44.330,+41,16,07.50,-35.99,-12.92,-301,0.001,3.44,0,0",
                        "Gal.Pole,GPol,ICRS,12,51,36.7,+27,06,11.2,0,0,0,0,0,0,0",
                        "Lich,PSRB1257+12,ICRS,13,00,03.1,+12,40,56,46.44,-84.87,0,1.41,999.99,0,0",
                        "Virgo Cluster,VC,2000,12,30,47.3,12,20,13,0,0,0,0,999.99,0,0"))
                .isEmpty();
    }

    @Test
    void missingList_isRefusedNamingItsPackage() {
        Path nowhere = folder.resolve("nowhere.txt");
        assertThatThrownBy(() -> MotionStars.read(nowhere))
                .isInstanceOf(InputRefused.class)
                .hasMessage(nowhere + " does not exist. Fetch and unpack the package swe-basic-data (Debian), then give"
                        + " its path as an argument.");
    }
}
