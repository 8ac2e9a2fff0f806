package polewright.web;

import java.time.Duration;
import java.time.Instant;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;

/** A telescope as it really stands, and what someone without a camera sees through it. */
interface TelescopeByEye {
    /** Where the axis really points. */
    AxisOffset offset();

    void turn(HandTurns azimuth, HandTurns altitude);

    /** Tightens or loosens the clamps. */
    void clamp();

    void moveByHand(Angle azimuth, Angle altitude);

    double compassDeg(Instant at);

    double scaleDeg(Instant at);

    /** From the line of a plumb's shadow to the axis. */
    double shadowDeg(Instant at);

    StarInView stillPoint(FixedStar star, Instant at, Optic optic);

    double northwardArcsec(FixedStar star, Instant from, Duration watched);

    /** Where a star is, seen from the centre of rotation: how many widths of the field away, toward which hour of a clock. */
    record StarInView(double fields, double clock) {}
}
