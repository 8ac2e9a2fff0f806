package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Detection of a base out of level and of a crooked hinge. The turns are exact rotations about tilted axes. */
class ScrewFindingTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    // Only accurate sightings can separate the effects of a leaning base and of a crooked hinge.
    private static final Angle USUAL = Angle.ofArcminutes(0.3);
    private static final Angle SHARP = Angle.ofArcminutes(0.1);

    /** A night with three turns of each screw on a leaning base with a hinge out of square. */
    private static List<ScrewFinding> findings(
            double latitudeDeg, double leanDeg, double rightOfPoleDeg, double hingeDeg, Angle sigma) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        KnownAxis known = KnownAxis.exactly(site, AxisOffset.ofArcminutes(-60, -60));
        double toward = site.poleAzimuth().radians() + Math.toRadians(rightOfPoleDeg);
        double lean = Math.tan(Math.toRadians(leanDeg));
        Vector3D vertical = new Vector3D(lean * Math.sin(toward), lean * Math.cos(toward), 1).normalize();
        List<Step> steps = new ArrayList<>();
        addSightings(steps, known, sigma);
        for (int i = 0; i < 3; i++) {
            known = swung(known, vertical, RIG.azimuthScrew().move(3, site.poleAltitude()));
            steps.add(new Step.Turned(steps.size() + 2L, 3, 0));
            addSightings(steps, known, sigma);
            known = raised(known, vertical, hingeDeg, RIG.altitudeScrew().move(3, site.poleAltitude()));
            steps.add(new Step.Turned(steps.size() + 2L, 0, 3));
            addSightings(steps, known, sigma);
        }
        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        return ScrewFinding.of(fix.state());
    }

    private static void addSightings(List<Step> steps, KnownAxis known, Angle sigma) {
        long seq = steps.size() + 2L;
        steps.add(known.step(seq, known.bearing(sigma)));
        steps.add(known.step(seq + 1, known.scale(sigma)));
    }

    private static KnownAxis swung(KnownAxis from, Vector3D vertical, Angle byAzimuth) {
        // Azimuth grows clockwise from above.
        return from.at(new AxisPointing(new Rotation(vertical, -byAzimuth.radians(), RotationConvention.VECTOR_OPERATOR)
                .applyTo(from.axis().elevatedEnd())));
    }

    private static KnownAxis raised(KnownAxis from, Vector3D vertical, double hingeDeg, Angle by) {
        Vector3D axis = from.axis().elevatedEnd();
        // A hinge out of square is equivalent to a base with a different lean.
        double toward = from.site().poleAzimuth().radians() + Math.PI / 2;
        double crooked = Math.tan(Math.toRadians(hingeDeg));
        Vector3D upright = vertical.add(new Vector3D(crooked * Math.sin(toward), crooked * Math.cos(toward), 0));
        Vector3D hinge = axis.crossProduct(upright).normalize();
        return from.at(
                new AxisPointing(new Rotation(hinge, by.radians(), RotationConvention.VECTOR_OPERATOR).applyTo(axis)));
    }

    @ParameterizedTest
    @CsvSource({"54.6, 2.5, 90", "54.6, 2.5, -90", "-43.95, 3, 90", "-43.95, 3, -70", "30, 2, 60"})
    void leaningBase_isFoundWithItsSide(double latitudeDeg, double leanDeg, double rightOfPoleDeg) {
        List<ScrewFinding> findings = findings(latitudeDeg, leanDeg, rightOfPoleDeg, 0, USUAL);

        assertThat(findings).singleElement().isInstanceOf(ScrewFinding.LeaningBase.class);
        ScrewFinding.LeaningBase leaning = (ScrewFinding.LeaningBase) findings.get(0);
        assertThat(leaning.toTheRight().degrees())
                .isCloseTo(leanDeg * Math.sin(Math.toRadians(rightOfPoleDeg)), within(0.4));
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95, 30})
    void levelBaseOrLeanTowardThePole_givesNoFinding(double latitudeDeg) {
        assertThat(findings(latitudeDeg, 0, 0, 0, USUAL)).isEmpty();
        assertThat(findings(latitudeDeg, 2, 0, 0, USUAL)).isEmpty();
        assertThat(findings(latitudeDeg, 2, 180, 0, USUAL)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"54.6, 1.2", "54.6, -1.2", "-43.95, 1.3", "-43.95, -1.3"})
    void crookedHinge_isFoundWithItsSide(double latitudeDeg, double hingeDeg) {
        List<ScrewFinding> findings = findings(latitudeDeg, 0, 0, hingeDeg, SHARP);

        assertThat(findings).singleElement().isInstanceOf(ScrewFinding.CrookedHinge.class);
        ScrewFinding.CrookedHinge crooked = (ScrewFinding.CrookedHinge) findings.get(0);
        assertThat(crooked.toTheRight().degrees()).isCloseTo(hingeDeg, within(0.4));
    }
}
