package polewright.bench.independent.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WedgeTest {
    private static final StillHand STILL = new StillHand();

    private static Wedge level(double latitudeDeg, Offset offset) {
        return Wedge.set(Place.ofDegrees(latitudeDeg, 0, 0), offset, 0, 1.25 / 200, 1.25 / 180, 0.2, STILL);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void wedge_isSetToItsOffset(double latitudeDeg) {
        Offset offset = level(latitudeDeg, new Offset(80, -45)).offset();
        assertThat(offset.eastArcmin()).isCloseTo(80, within(1e-9));
        assertThat(offset.upArcmin()).isCloseTo(-45, within(1e-9));
    }

    /** A thread of 1.25 mm on an arm of 200 mm: 21.5′ a turn; on the sky times cos φ (common practice). */
    @Test
    void azimuthToTheRight_isEastInTheNorthAndWestInTheSouth() {
        Turns oneTurn = Turns.straight(1, 0);
        double perTurn = Math.toDegrees(1.25 / 200) * 60 * Math.cos(Math.toRadians(50));
        // All of the backlash is lost first: it is drawn at its far end.
        double taken = perTurn * (1 - 0.2);
        assertThat(level(50, new Offset(0, 0)).turned(oneTurn, STILL).offset().eastArcmin())
                .isCloseTo(taken, within(0.02));
        assertThat(level(-50, new Offset(0, 0)).turned(oneTurn, STILL).offset().eastArcmin())
                .isCloseTo(-taken, within(0.02));
    }

    @Test
    void backlash_isLostOnceAtEachReversal() {
        Wedge there = level(50, new Offset(0, 0)).turned(Turns.straight(0, 3), STILL);
        Wedge back = there.turned(Turns.straight(0, -1), STILL);
        Wedge again = back.turned(Turns.straight(0, -1), STILL);
        double perTurn = Math.toDegrees(1.25 / 180) * 60;
        assertThat(there.offset().upArcmin() - back.offset().upArcmin()).isCloseTo(0.8 * perTurn, within(0.05));
        assertThat(back.offset().upArcmin() - again.offset().upArcmin()).isCloseTo(perTurn, within(0.05));
    }

    /** A base tilted by β to the east lowers an axis that is swung to the right by β for each radian, facing north. */
    @Test
    void tiltedBase_mixesTheScrews() {
        double lean = Math.toRadians(2);
        Wedge level = level(50, new Offset(0, 0));
        Wedge leaning = new Wedge(
                level.place(), lean, 0, level.azimuth(), level.altitude(), level.azimuthScrew(), level.altitudeScrew());
        Turns tenTurns = Turns.straight(10, 0);
        double swung = 9.8 * 1.25 / 200;
        double before = Directions.altitude(leaning.axis());
        double after = Directions.altitude(leaning.turned(tenTurns, STILL).axis());
        double levelToo = Directions.altitude(level.turned(tenTurns, STILL).axis()) - Directions.altitude(level.axis());
        assertThat(levelToo).isCloseTo(0, within(1e-12));
        assertThat(after - before).isCloseTo(-lean * swung, within(1e-4));
    }

    /**
     * For an axis at the pole, a star's distance is its polar distance, and it is above when it culminates (common
     * practice).
     */
    @Test
    void poleStar_relativeToTheCentreOfRotation() {
        Wedge wedge = level(54.6, new Offset(0, 0));
        Star star = new Star("a pole star", 0, Math.toRadians(89), 0, 0, 0, 0, 2);
        Observer exact = new Observer(Air.NONE, 1, STILL);
        Instant day = Instant.parse("2026-01-15T00:00:00Z");
        boolean isAbove = false;
        boolean isToTheLeft = false;
        for (int hour = 0; hour < 24; hour++) {
            Instant at = day.plusSeconds(3600L * hour);
            SeenSky sky = SeenSky.of(wedge.place(), at, Air.NONE);
            double[] seen = sky.direction(star);
            double hourAngleDeg = Math.toDegrees(sky.hourAngle(seen));
            double polarDistanceDeg = 90 - Math.toDegrees(sky.declination(seen));
            StarInField view = exact.stillPoint(wedge, star, at, Math.toRadians(6), ViewShown.ERECT);
            // Read in twentieths of the field.
            assertThat(6 * view.fieldWidths()).isCloseTo(polarDistanceDeg, within(0.16));
            // Counter-clockwise about the north pole as time goes by, from the top.
            double expected = (24 - hourAngleDeg / 30) % 12;
            double apart = Math.abs(view.clock() % 12 - expected);
            assertThat(Math.min(apart, 12 - apart)).isLessThan(0.3);
            isAbove |= view.clock() == 12;
            isToTheLeft |= view.clock() == 9;
        }
        assertThat(isAbove).isTrue();
        assertThat(isToTheLeft).isTrue();
    }
}
