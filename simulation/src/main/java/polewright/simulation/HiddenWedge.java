package polewright.simulation;

import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * What the person at the wedge does not know: where the axis really points, how the base leans, and what the screws
 * really do.
 *
 * @param axis ENU unit vector of the axis's elevated end
 * @param azimuthAxis ENU unit vector that the azimuth screw turns about: the vertical, but for the lean of the base
 * @param azimuthFactor what the azimuth screw does over what the rig says
 * @param altitudeFactor what the altitude screw does over what the rig says
 * @param azimuthPlay what the azimuth screw turns freely when its sense is reversed
 * @param altitudePlay the same of the altitude screw
 */
public record HiddenWedge(
        Site site,
        Rig rig,
        Vector3D axis,
        Vector3D azimuthAxis,
        double azimuthFactor,
        double altitudeFactor,
        DeadZone azimuthPlay,
        DeadZone altitudePlay) {
    /** A wedge with this offset, its screws, lean and play drawn as uncertain as the rig says they are. */
    public static HiddenWedge of(Site site, Rig rig, AxisOffset offset, RandomGenerator random) {
        double lean = rig.levelSigma().radians();
        Vector3D azimuthAxis = new Vector3D(lean * random.nextGaussian(), lean * random.nextGaussian(), 1).normalize();
        return new HiddenWedge(
                site,
                rig,
                AxisPointing.of(site, offset).elevatedEnd(),
                azimuthAxis,
                1 + rig.azimuthScrew().relativeGainSigma() * random.nextGaussian(),
                1 + rig.altitudeScrew().relativeGainSigma() * random.nextGaussian(),
                DeadZone.untouched(rig.azimuthScrew().backlashTurns() * random.nextDouble()),
                DeadZone.untouched(rig.altitudeScrew().backlashTurns() * random.nextDouble()));
    }

    public AxisPointing pointing() {
        return new AxisPointing(axis);
    }

    public AxisOffset offset() {
        return pointing().offset(site);
    }

    /** Screws turned straight, clockwise positive, by a hand no better than the rig says. */
    public HiddenWedge turned(double azimuthTurns, double altitudeTurns, RandomGenerator random) {
        return turned(HandTurns.straight(azimuthTurns), HandTurns.straight(altitudeTurns), random);
    }

    /** Screws turned, past the goal and back where that was asked: each leg by a hand no better than the rig says. */
    public HiddenWedge turned(HandTurns azimuth, HandTurns altitude, RandomGenerator random) {
        Turned raising = byHand(rig.altitudeScrew(), altitude, altitudePlay, random);
        Turned swinging = byHand(rig.azimuthScrew(), azimuth, azimuthPlay, random);
        Vector3D raised = raise(axis, raising.effectiveTurns(), altitudeFactor);
        double swung = azimuthFactor
                * rig.azimuthScrew()
                        .move(swinging.effectiveTurns(), pointing().altitude())
                        .radians();
        // Azimuth grows clockwise from above, which is a negative turn about the upward axis.
        Vector3D turned = new Rotation(azimuthAxis, -swung, RotationConvention.VECTOR_OPERATOR).applyTo(raised);
        return new HiddenWedge(
                site, rig, turned, azimuthAxis, azimuthFactor, altitudeFactor, swinging.play(), raising.play());
    }

    /** Clamps tightened or loosened: the axis shifts a little. */
    public HiddenWedge clamped(RandomGenerator random) {
        return shifted(rig.clampSigma(), random);
    }

    /** The whole mount moved by hand, about so far, facing the pole: right and up positive. */
    public HiddenWedge moved(Angle azimuth, Angle altitude, RandomGenerator random) {
        Angle roughly = Angle.ofDegrees(1);
        AxisPointing there = AxisPointing.of(
                pointing().azimuth().plus(azimuth).plus(roughly.times(random.nextGaussian())),
                pointing().altitude().plus(altitude).plus(roughly.times(random.nextGaussian())));
        return new HiddenWedge(
                site, rig, there.elevatedEnd(), azimuthAxis, azimuthFactor, altitudeFactor, azimuthPlay, altitudePlay);
    }

    private Vector3D raise(Vector3D from, double turns, double factor) {
        double rise = factor
                * rig.altitudeScrew()
                        .move(turns, new AxisPointing(from).altitude())
                        .radians();
        // The hinge leans with the base: square to the axis and to the base's own vertical.
        Vector3D hinge = from.crossProduct(azimuthAxis).normalize();
        return new Rotation(hinge, rise, RotationConvention.VECTOR_OPERATOR).applyTo(from);
    }

    private HiddenWedge shifted(Angle sigma, RandomGenerator random) {
        Vector3D up = azimuthAxis
                .subtract(axis.scalarMultiply(azimuthAxis.dotProduct(axis)))
                .normalize();
        Vector3D right = axis.crossProduct(up);
        Vector3D moved = axis.add(new Vector3D(
                        sigma.radians() * random.nextGaussian(), right, sigma.radians() * random.nextGaussian(), up))
                .normalize();
        return new HiddenWedge(site, rig, moved, azimuthAxis, azimuthFactor, altitudeFactor, azimuthPlay, altitudePlay);
    }

    private record Turned(double effectiveTurns, DeadZone play) {}

    private static Turned byHand(Screw screw, HandTurns asked, DeadZone play, RandomGenerator random) {
        Turned turned = new Turned(0, play);
        for (double leg :
                asked.isPastAndBack() ? new double[] {asked.outward(), asked.back()} : new double[] {asked.net()}) {
            if (leg != 0) {
                double made = leg + screw.handSigmaTurns() * random.nextGaussian();
                turned = new Turned(
                        turned.effectiveTurns() + turned.play().effectOf(made),
                        turned.play().after(made));
            }
        }
        return turned;
    }
}
