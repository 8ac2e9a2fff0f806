package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.ToldRig;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * The motion of the view while the screws are turned, against a Jacobian J derived outside this project: the image
 * moves by −J.
 */
class SkyInViewTest {
    private static final double ONE_ARCMIN = Angle.ofArcminutes(1).radians();

    private static AxisPointing moved(Site site, double azimuthArcmin, double altitudeArcmin) {
        AxisPointing pole = AxisPointing.atPole(site);
        return AxisPointing.of(
                pole.azimuth().plus(Angle.ofArcminutes(azimuthArcmin)),
                pole.altitude().plus(Angle.ofArcminutes(altitudeArcmin)));
    }

    /** ENU unit vectors of a star and of north and east at it, from hour angle and declination (sheet, section 0). */
    private record Star(Vector3D at, Vector3D north, Vector3D east) {
        static Star of(Site site, double hourAngleDeg, double decDeg) {
            double sinH = Math.sin(Math.toRadians(hourAngleDeg));
            double cosH = Math.cos(Math.toRadians(hourAngleDeg));
            double sinD = Math.sin(Math.toRadians(decDeg));
            double cosD = Math.cos(Math.toRadians(decDeg));
            double sinL = site.latitude().sin();
            double cosL = site.latitude().cos();
            return new Star(
                    new Vector3D(-cosD * sinH, cosL * sinD - sinL * cosD * cosH, sinL * sinD + cosL * cosD * cosH),
                    new Vector3D(sinD * sinH, cosL * cosD + sinL * sinD * cosH, sinL * cosD - cosL * sinD * cosH),
                    new Vector3D(cosH, -sinL * sinH, cosL * sinH));
        }
    }

    /**
     * J as derived there: [[−(sinφ cosδ − cosφ sinδ cosh), s sinδ sinh], [cosφ sinh, −s cosh]] (dA, dh) as [east,
     * north].
     */
    @ParameterizedTest
    @CsvSource({
        "54.6, 0, 20, 1, 0",
        "54.6, 0, 20, 0, 1",
        "54.6, -60, 40, 1, 0",
        "54.6, 75, 10, 0, 1",
        "54.6, 130, 70, 1, 1",
        "-43.95, 0, -20, 1, 0",
        "-43.95, 0, -20, 0, 1",
        "-43.95, -60, -40, 1, 0",
        "-43.95, 75, 10, 0, 1",
        "-43.95, 130, -70, 1, 1"
    })
    void starImage_movesOppositeToThePointing(
            double latitudeDeg, double hourAngleDeg, double decDeg, double azimuth, double altitude) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Star star = Star.of(site, hourAngleDeg, decDeg);
        double h = Math.toRadians(hourAngleDeg);
        double d = Math.toRadians(decDeg);
        double s = site.hemisphereSign();
        double sinL = site.latitude().sin();
        double cosL = site.latitude().cos();
        double east = -(sinL * Math.cos(d) - cosL * Math.sin(d) * Math.cos(h)) * azimuth
                + s * Math.sin(d) * Math.sin(h) * altitude;
        double north = cosL * Math.sin(h) * azimuth - s * Math.cos(h) * altitude;
        Vector3D shift = star.east().scalarMultiply(east).add(star.north().scalarMultiply(north));
        Vector3D up = Vector3D.PLUS_K
                .subtract(star.at().scalarMultiply(star.at().getZ()))
                .normalize();
        Vector3D right = star.at().crossProduct(up);

        Vector2D image = SkyInView.moveOnSky(star.at(), AxisPointing.atPole(site), moved(site, azimuth, altitude));

        assertThat(image.getX() / ONE_ARCMIN).isCloseTo(-shift.dotProduct(right), within(2e-3));
        assertThat(image.getY() / ONE_ARCMIN).isCloseTo(-shift.dotProduct(up), within(2e-3));
    }

    /**
     * Facing the pole in either hemisphere: raising the axis lowers the pole star, swinging it right moves the star
     * left.
     */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void starAtThePole_movesOppositeToTheAxis(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        AxisPointing pole = AxisPointing.atPole(site);

        Vector2D raised = SkyInView.moveOnSky(pole.elevatedEnd(), pole, moved(site, 0, 30));
        Vector2D swungRight = SkyInView.moveOnSky(pole.elevatedEnd(), pole, moved(site, 30, 0));

        assertThat(raised.getY() / ONE_ARCMIN).isCloseTo(-30, within(0.01));
        assertThat(raised.getX() / ONE_ARCMIN).isCloseTo(0, within(0.01));
        assertThat(swungRight.getX() / ONE_ARCMIN)
                .isCloseTo(-30 * site.latitude().cos(), within(0.01));
    }

    /**
     * Polaris is 38′ from its pole, Sigma Octantis 70′ (common practice: two thirds of a degree, a little over one).
     * Neither is in a field of 24′ or 48′ about an axis near the pole; both are in a finder's 6°.
     */
    @ParameterizedTest
    @CsvSource({
        "54.6, -10, reticle, false",
        "54.6, -25, eyepiece, false",
        "54.6, -60, finder, true",
        "-43.95, -10, reticle, false",
        "-43.95, -25, eyepiece, false",
        "-43.95, -60, finder, true"
    })
    void poleStar_isOnlyNamedInAViewThatContainsIt(
            double latitudeDeg, double upArcmin, String optic, boolean isPoleStar) {
        Rig rig = ToldRig.typical();
        KnownAxis low = KnownAxis.exactly(Site.ofDegrees(latitudeDeg, 0, 200), AxisOffset.ofArcminutes(0, upArcmin));
        Angle sharp = Angle.ofArcseconds(2);
        Fix fix = FixSolver.solve(
                low.site(),
                rig,
                KnownAxis.AIR,
                List.of(low.step(2, low.driftOnMeridian(15, sharp)), low.step(3, low.driftInEast(15, sharp))));

        Advice advice = Adviser.advise(
                new Situation(rig, fix, DiscAllowance.VISUAL, false, Confirmation.NONE, Set.of(), Daylight.NONE));

        assertThat(advice)
                .isInstanceOfSatisfying(
                        Advice.TurnScrews.class,
                        turns -> assertThat(turns.sky()).singleElement().satisfies(seen -> {
                            assertThat(seen.optic()).isEqualTo(optic);
                            assertThat(seen.isPoleStar()).isEqualTo(isPoleStar);
                        }));
    }

    /** An inverting finder shows a sinking star rising; a diagonal only swaps left and right. */
    @Test
    void moveInTheUsersView_followsTheOrientationOfTheView() {
        Site site = Site.ofDegrees(54.6, 0, 0);
        AxisPointing pole = AxisPointing.atPole(site);
        Vector2D raised = SkyInView.moveOnSky(pole.elevatedEnd(), pole, moved(site, 0, 30));
        Vector2D swungRight = SkyInView.moveOnSky(pole.elevatedEnd(), pole, moved(site, 30, 0));

        assertThat(View.of(Orientation.INVERTED).fromSky(raised).getY()).isPositive();
        assertThat(View.of(Orientation.MIRRORED).fromSky(raised).getY()).isNegative();
        assertThat(View.of(Orientation.ERECT).fromSky(swungRight).getX()).isNegative();
        assertThat(View.of(Orientation.INVERTED).fromSky(swungRight).getX()).isPositive();
        assertThat(View.of(Orientation.MIRRORED).fromSky(swungRight).getX()).isPositive();
    }
}
