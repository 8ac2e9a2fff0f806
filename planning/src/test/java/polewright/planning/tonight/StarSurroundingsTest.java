package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarColour;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** The surroundings of a star for an observer facing it; well-known facts of the sky, common practice. */
class StarSurroundingsTest {
    private static StarSurroundings around(String star, Site site, String at) {
        ObservingMoment moment =
                ObservingMoment.of(site, SkyTime.of(Instant.parse(at)), Weather.standardAt(site.heightMetres()));
        StarsInView stars = StarsInView.at(moment);
        StarInView seen = stars.up().stream()
                .filter(s -> s.name().equals(star))
                .findFirst()
                .orElseThrow();
        return StarSurroundings.of(seen, stars, moment);
    }

    private static StarSurroundings.Neighbour guide(StarSurroundings around, String name) {
        return around.guides().stream()
                .filter(g -> g.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** On a northern autumn evening Vega is in the west with Deneb above it, 24° away. */
    @Test
    void vega_isTheBrightestOfLyra_withDenebAboveItInAutumn() {
        StarSurroundings vega = around("Vega", AlignmentStarsTest.LARKFELL, "2026-11-25T18:30:00Z");
        assertThat(vega.constellation().name()).isEqualTo("Lyra");
        assertThat(vega.isItsBrightest()).isTrue();
        assertThat(vega.colour()).contains(StarColour.WHITE);
        assertThat(guide(vega, "Deneb").distance().degrees()).isBetween(23.5, 24.2);
        assertThat(guide(vega, "Deneb").side()).isIn(RelativeDirection.ABOVE, RelativeDirection.ABOVE_RIGHT);
        assertThat(guide(vega, "Deneb").isBrighter()).contains(false);
    }

    /** In the south Orion is upside down: Rigel is above Betelgeuse there, below it in the north. */
    @Test
    void rigel_isBelowBetelgeuseInTheNorth_andAboveItInTheSouth() {
        StarSurroundings north = around("Betelgeuse", AlignmentStarsTest.LARKFELL, "2026-01-15T22:40:00Z");
        StarSurroundings south = around("Betelgeuse", AlignmentStarsTest.TUSSOCK_FLAT, "2026-01-15T11:00:00Z");
        assertThat(guide(north, "Rigel").side()).isIn(RelativeDirection.BELOW, RelativeDirection.BELOW_RIGHT);
        assertThat(guide(south, "Rigel").side()).isIn(RelativeDirection.ABOVE, RelativeDirection.ABOVE_LEFT);
        assertThat(north.isItsBrightest()).isFalse();
    }

    @Test
    void castorAndPollux_areDistinguished() {
        StarSurroundings pollux = around("Pollux", AlignmentStarsTest.LARKFELL, "2026-02-15T22:00:00Z");
        assertThat(pollux.lookalikes()).singleElement().satisfies(castor -> {
            assertThat(castor.name()).isEqualTo("Castor");
            assertThat(castor.distance().degrees()).isBetween(4.0, 5.0);
            assertThat(castor.isBrighter()).contains(false);
        });
    }

    /** Jupiter was in Gemini at its opposition of 10 January 2026 (almanacs), so closer than 25° to Pollux. */
    @Test
    void nearbyPlanet_isNamed() {
        StarSurroundings pollux = around("Pollux", AlignmentStarsTest.LARKFELL, "2026-01-10T23:00:00Z");
        assertThat(pollux.planets()).anySatisfy(planet -> {
            assertThat(planet.name()).isEqualTo("Jupiter");
            assertThat(planet.isBrighter()).contains(true);
        });
    }

    @Test
    void directions_areThoseOfAnObserverFacingTheStar() {
        RefractedDirection star = at(90, 40);
        assertThat(RelativeDirection.of(at(90, 50), star)).isEqualTo(RelativeDirection.ABOVE);
        assertThat(RelativeDirection.of(at(100, 40), star)).isEqualTo(RelativeDirection.RIGHT);
        assertThat(RelativeDirection.of(at(90, 30), star)).isEqualTo(RelativeDirection.BELOW);
        assertThat(RelativeDirection.of(at(80, 40), star)).isEqualTo(RelativeDirection.LEFT);
        assertThat(RelativeDirection.of(at(350, 40), at(355, 40))).isEqualTo(RelativeDirection.LEFT);
        assertThat(RelativeDirection.of(at(2, 40), at(357, 40))).isEqualTo(RelativeDirection.RIGHT);
        assertThat(RelativeDirection.of(at(270, 80), at(90, 80))).isEqualTo(RelativeDirection.ABOVE);
    }

    private static RefractedDirection at(double azimuthDeg, double altitudeDeg) {
        return RefractedDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg));
    }
}
