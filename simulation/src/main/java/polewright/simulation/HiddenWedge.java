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
 * The true state of a wedge, hidden from its user: where the axis points, how the base tilts, and what the screws
 * really do.
 *
 * @param axis ENU unit vector of the axis's elevated end
 * @param azimuthAxis ENU unit vector about which the azimuth screw turns: the vertical, tilted with the base
 * @param azimuthFactor the azimuth screw's true effect over its nominal one in the rig
 * @param altitudeFactor the altitude screw's true effect over its nominal one in the rig
 * @param azimuthBacklash the backlash of the azimuth screw
 * @param altitudeBacklash the backlash of the altitude screw
 */
public record HiddenWedge(
        Site site,
        Rig rig,
        Vector3D axis,
        Vector3D azimuthAxis,
        double azimuthFactor,
        double altitudeFactor,
        DeadZone azimuthBacklash,
        DeadZone altitudeBacklash) {
    /**
     * A wedge with this offset; screw effects, tilt and backlash are drawn with the uncertainties that the rig
     * states.
     */
    public static HiddenWedge of(Site site, Rig rig, AxisOffset offset, RandomGenerator random) {
        double tilt = rig.levelSigma().radians();
        Vector3D azimuthAxis = new Vector3D(tilt * random.nextGaussian(), tilt * random.nextGaussian(), 1).normalize();
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

    /** Turns the screws directly, clockwise positive, with the hand error that the rig states. */
    public HiddenWedge turned(double azimuthTurns, double altitudeTurns, RandomGenerator random) {
        return turned(HandTurns.straight(azimuthTurns), HandTurns.straight(altitudeTurns), random);
    }

    /** Turns the screws, past the target and back where requested; each leg has the hand error that the rig states. */
    public HiddenWedge turned(HandTurns azimuth, HandTurns altitude, RandomGenerator random) {
        Turned raising = byHand(rig.altitudeScrew(), altitude, altitudeBacklash, random);
        Turned swinging = byHand(rig.azimuthScrew(), azimuth, azimuthBacklash, random);
        Vector3D raised = raise(axis, raising.effectiveTurns(), altitudeFactor);
        double swung = azimuthFactor
                * rig.azimuthScrew()
                        .move(swinging.effectiveTurns(), pointing().altitude())
                        .radians();
        // Azimuth grows clockwise from above, which is a negative turn about the upward axis.
        Vector3D turned = new Rotation(azimuthAxis, -swung, RotationConvention.VECTOR_OPERATOR).applyTo(raised);
        return new HiddenWedge(
                site, rig, turned, azimuthAxis, azimuthFactor, altitudeFactor, swinging.backlash(), raising.backlash());
    }

    /** After tightening or loosening the clamps, which shifts the axis a little. */
    public HiddenWedge clamped(RandomGenerator random) {
        return shiftedRandomly(rig.clampSigma(), random);
    }

    /** After moving the whole mount by hand, roughly by these angles, facing the pole: right and up positive. */
    public HiddenWedge moved(Angle azimuth, Angle altitude, RandomGenerator random) {
        Angle roughly = Angle.ofDegrees(1);
        AxisPointing there = AxisPointing.of(
                pointing().azimuth().plus(azimuth).plus(roughly.times(random.nextGaussian())),
                pointing().altitude().plus(altitude).plus(roughly.times(random.nextGaussian())));
        return new HiddenWedge(
                site,
                rig,
                there.elevatedEnd(),
                azimuthAxis,
                azimuthFactor,
                altitudeFactor,
                azimuthBacklash,
                altitudeBacklash);
    }

    private Vector3D raise(Vector3D from, double turns, double factor) {
        double rise = factor
                * rig.altitudeScrew()
                        .move(turns, new AxisPointing(from).altitude())
                        .radians();
        // The hinge tilts with the base: perpendicular to the axis and to the base's own vertical.
        Vector3D hinge = from.crossProduct(azimuthAxis).normalize();
        return new Rotation(hinge, rise, RotationConvention.VECTOR_OPERATOR).applyTo(from);
    }

    private HiddenWedge shiftedRandomly(Angle sigma, RandomGenerator random) {
        Vector3D up = azimuthAxis
                .subtract(axis.scalarMultiply(azimuthAxis.dotProduct(axis)))
                .normalize();
        Vector3D right = axis.crossProduct(up);
        Vector3D moved = axis.add(new Vector3D(
                        sigma.radians() * random.nextGaussian(), right, sigma.radians() * random.nextGaussian(), up))
                .normalize();
        return new HiddenWedge(
                site, rig, moved, azimuthAxis, azimuthFactor, altitudeFactor, azimuthBacklash, altitudeBacklash);
    }

    private record Turned(double effectiveTurns, DeadZone backlash) {}

    private static Turned byHand(Screw screw, HandTurns ordered, DeadZone backlash, RandomGenerator random) {
        Turned turned = new Turned(0, backlash);
        for (double leg : ordered.isPastAndBack()
                ? new double[] {ordered.outward(), ordered.back()}
                : new double[] {ordered.net()}) {
            if (leg != 0) {
                double made = leg + screw.handSigmaTurns() * random.nextGaussian();
                turned = new Turned(
                        turned.effectiveTurns() + turned.backlash().effectOf(made),
                        turned.backlash().after(made));
            }
        }
        return turned;
    }
}
