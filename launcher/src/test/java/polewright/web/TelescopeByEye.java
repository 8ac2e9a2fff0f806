package polewright.web;

import java.time.Duration;
import java.time.Instant;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;

/** A telescope with its true axis, and its readings for an observer without a camera. */
interface TelescopeByEye {
    /** Where the axis really points. */
    AxisOffset offset();

    void turn(HandTurns azimuth, HandTurns altitude);

    /** Tightens or loosens the clamps. */
    void clamp();

    void moveByHand(Angle azimuth, Angle altitude);

    double compassDeg(Instant at);

    double scaleDeg(Instant at);

    /** Angle from the shadow line of a plumb line to the axis. */
    double shadowDeg(Instant at);

    StarInView stillPoint(FixedStar star, Instant at, Optic optic);

    double northwardArcsec(FixedStar star, Instant from, Duration watched);

    /**
     * Position of a star relative to the centre of rotation: distance in field widths, direction as an hour on a
     * clock.
     */
    record StarInView(double fields, double clock) {}
}
