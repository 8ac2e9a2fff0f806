package polewright.mount.reach;

import polewright.sky.angle.Angle;

/** What prevents the tube from pointing somewhere. Altitudes are apparent, refraction included. */
public sealed interface Barrier {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** Below the horizon. */
    record BelowHorizon(Angle altitude) implements Barrier {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.belowHorizon(this);
        }
    }

    /** Behind trees, roofs, hills. */
    record BehindSkyline(Angle altitude, Angle skyline) implements Barrier {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.behindSkyline(this);
        }
    }

    /** Above the horizon, but below the lowest altitude of the rig. */
    record TooLow(Angle altitude, Angle lowest) implements Barrier {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.tooLow(this);
        }
    }

    /**
     * The tube, or what is attached behind it, would hit the fork.
     *
     * @param part the end that hits
     * @param setting the declination wanted (altitude on an upright fork)
     * @param farthest the farthest that clears, with its sign
     */
    record StrikesFork(End part, Angle setting, Angle farthest) implements Barrier {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.strikesFork(this);
        }
    }

    /** The cables, or a stop, limit the rotation about the polar axis; hour angles, west positive. */
    record CablesEnd(Angle hourAngle, Angle farthest) implements Barrier {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.cablesEnd(this);
        }
    }

    /** The end of the tube. */
    enum End {
        BACK,
        FRONT
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R belowHorizon(BelowHorizon barrier);

        R behindSkyline(BehindSkyline barrier);

        R tooLow(TooLow barrier);

        R strikesFork(StrikesFork barrier);

        R cablesEnd(CablesEnd barrier);
    }
}
