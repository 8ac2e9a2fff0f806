package polewright.alignment.sighting;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** The direction of a star's drift as the observer gave it. */
public sealed interface DriftDirection {
    /**
     * The northward fraction of the motion: +1 due north, −1 due south, 0 due east or west.
     *
     * @param star ENU unit vector of the star half-way through
     * @param northPole ENU unit vector of the north celestial pole
     */
    double northShare(Vector3D star, Vector3D northPole);

    /** The north that it refers to. */
    ReticleNorth readAlong();

    /** The same motion in the opposite direction. */
    DriftDirection reversed();

    /**
     * The same motion through the correct optic.
     *
     * @return empty if it was not seen in the view of this optic
     */
    Optional<DriftDirection> throughCorrectedOptic(OpticCorrection correction);

    /** In plain words. */
    String words();

    /** Written next to the other fields of the drift. */
    void write(FieldWriter out);

    /** The counterpart of {@link #write}. */
    static DriftDirection read(FieldReader in) {
        if (in.has("toward")) {
            return OnSky.read(in);
        }
        if (!in.has("toward_clock")) {
            throw new InputRefused(
                    "toward is missing", "give \"north\" or \"south\", or toward_clock for the edge that was seen");
        }
        ClockDirection edge = ClockDirection.read(in, "toward_clock");
        if (in.has("west_clock")) {
            return new TowardEdgeGivenWest(edge, ClockDirection.read(in, "west_clock"), in.flag("mirrored"));
        }
        if (!in.has("view")) {
            throw in.refused(
                    "toward_clock", " alone does not give the direction", "add the view, or west_clock and mirrored");
        }
        return new TowardEdge(edge, in.object("view", View::read));
    }

    /**
     * North or south along the line of a reticle.
     *
     * @param north true also when there was no drift
     * @param readAlong how the line was set
     */
    record OnSky(boolean north, ReticleNorth readAlong) implements DriftDirection {
        /** Without saying how the line was set. */
        public OnSky(boolean north) {
            this(north, ReticleNorth.NOT_TOLD);
        }

        @Override
        public double northShare(Vector3D star, Vector3D northPole) {
            return north ? 1 : -1;
        }

        @Override
        public DriftDirection reversed() {
            return new OnSky(!north, readAlong);
        }

        @Override
        public Optional<DriftDirection> throughCorrectedOptic(OpticCorrection correction) {
            return Optional.of(this);
        }

        @Override
        public String words() {
            return north ? "north" : "south";
        }

        private enum Toward {
            NORTH,
            SOUTH
        }

        /** How a reticle was oriented. */
        private enum Reticle {
            TRAIL,
            SLOW_MOTION
        }

        @Override
        public void write(FieldWriter out) {
            out.word("toward", north ? Toward.NORTH : Toward.SOUTH);
            if (readAlong != ReticleNorth.NOT_TOLD) {
                out.word("reticle", readAlong == ReticleNorth.SKY ? Reticle.TRAIL : Reticle.SLOW_MOTION);
            }
        }

        private static OnSky read(FieldReader in) {
            boolean north = in.choice("toward", Toward.class) == Toward.NORTH;
            if (!in.has("reticle")) {
                return new OnSky(north);
            }
            boolean isTrail = in.choice("reticle", Reticle.class) == Reticle.TRAIL;
            return new OnSky(north, isTrail ? ReticleNorth.SKY : ReticleNorth.MOUNT);
        }
    }

    /** Toward an edge of a view whose upright is the vertical of the sky. */
    record TowardEdge(ClockDirection edge, View view) implements DriftDirection {
        @Override
        public double northShare(Vector3D star, Vector3D northPole) {
            double angle = edge.clockwiseFromTop().radians();
            Vector2D sky = view.toSky(new Vector2D(Math.sin(angle), Math.cos(angle)));
            Vector3D up = StillPoint.towardZenith(star);
            Vector3D motion = new Vector3D(sky.getX(), star.crossProduct(up), sky.getY(), up);
            Vector3D north = northPole
                    .subtract(star.scalarMultiply(northPole.dotProduct(star)))
                    .normalize();
            return motion.dotProduct(north);
        }

        /** The sky's: the vertical and the direction in which stars leave belong to the sky. */
        @Override
        public ReticleNorth readAlong() {
            return ReticleNorth.SKY;
        }

        @Override
        public DriftDirection reversed() {
            return new TowardEdge(opposite(edge), view);
        }

        @Override
        public Optional<DriftDirection> throughCorrectedOptic(OpticCorrection correction) {
            return correction.covers(view)
                    ? Optional.of(new TowardEdge(edge, correction.view(view)))
                    : Optional.empty();
        }

        @Override
        public String words() {
            return "toward " + PlainNumber.of(edge.hours()) + " o'clock";
        }

        @Override
        public void write(FieldWriter out) {
            out.number("toward_clock", edge.hours()).object("view", view, View::write);
        }
    }

    /**
     * Toward an edge of a view whose west is known because stars leave the field there with the drive stopped. This
     * holds however the eyepiece is turned.
     *
     * @param edge where the star drifted while tracked
     * @param west where stars leave when the drive is stopped
     * @param mirrored whether the view is mirror-reversed (a star diagonal)
     */
    record TowardEdgeGivenWest(ClockDirection edge, ClockDirection west, boolean mirrored) implements DriftDirection {
        private static final double LEAST_NORTH_SHARE = 0.2;

        public TowardEdgeGivenWest {
            if (Math.abs(share(edge, west, mirrored)) < LEAST_NORTH_SHARE) {
                throw new InputRefused(
                        "a drift toward " + PlainNumber.of(edge.hours())
                                + " o'clock is along east and west (west is at " + PlainNumber.of(west.hours())
                                + "), which measures the drive and not the axis",
                        "give only the motion across that line; 0 if there was none");
            }
        }

        @Override
        public double northShare(Vector3D star, Vector3D northPole) {
            return share(edge, west, mirrored);
        }

        /** The sky's: the vertical and the direction in which stars leave belong to the sky. */
        @Override
        public ReticleNorth readAlong() {
            return ReticleNorth.SKY;
        }

        @Override
        public DriftDirection reversed() {
            return new TowardEdgeGivenWest(opposite(edge), west, mirrored);
        }

        @Override
        public Optional<DriftDirection> throughCorrectedOptic(OpticCorrection correction) {
            return correction.coversMirrored(mirrored)
                    ? Optional.of(new TowardEdgeGivenWest(edge, west, correction.mirrored()))
                    : Optional.empty();
        }

        @Override
        public String words() {
            return "toward " + PlainNumber.of(edge.hours()) + " o'clock, west at " + PlainNumber.of(west.hours());
        }

        @Override
        public void write(FieldWriter out) {
            out.number("toward_clock", edge.hours())
                    .number("west_clock", west.hours())
                    .flag("mirrored", mirrored);
        }

        // With north at the top of an unmirrored view, west is at 3 o'clock: north is a quarter turn back from west.
        private static double share(ClockDirection edge, ClockDirection west, boolean mirrored) {
            Angle quarter = mirrored ? Angle.QUARTER_TURN : Angle.QUARTER_TURN.negated();
            Angle north = west.clockwiseFromTop().plus(quarter);
            return edge.clockwiseFromTop().minus(north).cos();
        }
    }

    private static ClockDirection opposite(ClockDirection direction) {
        return ClockDirection.ofAngle(direction.clockwiseFromTop().plus(Angle.HALF_TURN));
    }
}
