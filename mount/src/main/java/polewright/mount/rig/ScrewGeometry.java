package polewright.mount.rig;

import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** How far one screw moves the axis per turn. */
public sealed interface ScrewGeometry {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * The movement of the axis for {@code turns}; positive turns give a positive movement.
     *
     * @param presentAltitude altitude of the axis before the turn; used only by a turnbuckle
     */
    Angle move(double turns, Angle presentAltitude);

    /** The turns for a movement {@code move}; the inverse of {@link #move}. */
    double turnsFor(Angle move, Angle presentAltitude);

    /** A screw whose turns move the axis {@code factor} times as far. */
    ScrewGeometry scaled(double factor);

    /** Measured on the mount or found by trial. */
    record DegreesPerTurn(Angle perTurn) implements ScrewGeometry {
        public DegreesPerTurn {
            requirePositive("movement per turn", perTurn.degrees(), "degrees", 90);
        }

        @Override
        public Angle move(double turns, Angle presentAltitude) {
            return perTurn.times(turns);
        }

        @Override
        public double turnsFor(Angle move, Angle presentAltitude) {
            return move.radians() / perTurn.radians();
        }

        @Override
        public ScrewGeometry scaled(double factor) {
            return new DegreesPerTurn(perTurn.times(factor));
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.degreesPerTurn(this);
        }
    }

    /**
     * A screw that pushes an arm: one turn moves the axis atan(pitch / arm).
     *
     * @param threadPitchMm advance of the screw in one turn, mm
     * @param armMm perpendicular distance from the pivot to the screw's line, mm
     */
    record PushScrew(double threadPitchMm, double armMm) implements ScrewGeometry {
        public PushScrew {
            requirePositive("thread pitch", threadPitchMm, "mm", 20);
            requirePositive("arm length", armMm, "mm", 2000);
        }

        @Override
        public Angle move(double turns, Angle presentAltitude) {
            return perTurn().times(turns);
        }

        @Override
        public double turnsFor(Angle move, Angle presentAltitude) {
            return move.radians() / perTurn().radians();
        }

        /** Usually the arm is poorly known, and the thread's pitch well. */
        @Override
        public ScrewGeometry scaled(double factor) {
            return new PushScrew(
                    threadPitchMm, threadPitchMm / Math.tan(factor * perTurn().radians()));
        }

        private Angle perTurn() {
            return new Angle(Math.atan(threadPitchMm / armMm));
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.pushScrew(this);
        }
    }

    /**
     * A screw between two pivots that form a triangle with the wedge's hinge. With g the angle at the hinge, cos g =
     * (a² + b² − c²) / 2ab; the altitude is g plus a constant of the wedge, so lengthening raises the axis. Movements
     * and turns are limited to where the triangle closes flat.
     *
     * @param hingeToLowerMm a, hinge to the lower pivot, mm
     * @param hingeToUpperMm b, hinge to the upper pivot, mm
     * @param lengthAtReferenceMm c when the axis is at {@code referenceAltitude}, mm
     * @param referenceAltitude altitude of the axis at that length
     * @param leadPerTurnMm change of c in one turn, mm: the sum of both threads' leads if they have opposite hands
     */
    record Turnbuckle(
            double hingeToLowerMm,
            double hingeToUpperMm,
            double lengthAtReferenceMm,
            Angle referenceAltitude,
            double leadPerTurnMm)
            implements ScrewGeometry {
        public Turnbuckle {
            requirePositive("distance hinge to lower pivot", hingeToLowerMm, "mm", 2000);
            requirePositive("distance hinge to upper pivot", hingeToUpperMm, "mm", 2000);
            requirePositive("screw length", lengthAtReferenceMm, "mm", 2000);
            requirePositive("lead per turn", leadPerTurnMm, "mm", 20);
            if (lengthAtReferenceMm >= hingeToLowerMm + hingeToUpperMm
                    || lengthAtReferenceMm <= Math.abs(hingeToLowerMm - hingeToUpperMm)) {
                throw new InputRefused(
                        "a screw of " + lengthAtReferenceMm + " mm does not form a triangle with sides "
                                + hingeToLowerMm + " and " + hingeToUpperMm + " mm",
                        "measure the three distances between the pivots' centres again");
            }
        }

        @Override
        public Angle move(double turns, Angle presentAltitude) {
            double opening = openingRad(presentAltitude);
            double length = clampLength(lengthMm(opening) + turns * leadPerTurnMm);
            return new Angle(openingOfLengthRad(length) - opening);
        }

        @Override
        public double turnsFor(Angle move, Angle presentAltitude) {
            double opening = openingRad(presentAltitude);
            double wanted = Math.min(Math.PI, Math.max(0, opening + move.radians()));
            return (lengthMm(wanted) - lengthMm(opening)) / leadPerTurnMm;
        }

        @Override
        public ScrewGeometry scaled(double factor) {
            return new Turnbuckle(
                    hingeToLowerMm, hingeToUpperMm, lengthAtReferenceMm, referenceAltitude, factor * leadPerTurnMm);
        }

        private double openingRad(Angle altitude) {
            double opening = openingOfLengthRad(lengthAtReferenceMm)
                    + altitude.minus(referenceAltitude).radians();
            return Math.min(Math.PI, Math.max(0, opening));
        }

        private double lengthMm(double openingRad) {
            return Math.sqrt(hingeToLowerMm * hingeToLowerMm
                    + hingeToUpperMm * hingeToUpperMm
                    - 2 * hingeToLowerMm * hingeToUpperMm * Math.cos(openingRad));
        }

        private double openingOfLengthRad(double lengthMm) {
            double cosine = (hingeToLowerMm * hingeToLowerMm + hingeToUpperMm * hingeToUpperMm - lengthMm * lengthMm)
                    / (2 * hingeToLowerMm * hingeToUpperMm);
            // With the triangle closed flat, rounding can push the cosine past 1.
            return Math.acos(Math.min(1, Math.max(-1, cosine)));
        }

        private double clampLength(double lengthMm) {
            double shortest = Math.abs(hingeToLowerMm - hingeToUpperMm);
            double longest = hingeToLowerMm + hingeToUpperMm;
            return Math.min(longest, Math.max(shortest, lengthMm));
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.turnbuckle(this);
        }
    }

    private static void requirePositive(String what, double value, String unit, double limit) {
        if (!(value > 0 && value <= limit)) {
            throw new InputRefused(
                    what + " of " + value + " " + unit + " is outside 0 to " + limit + " " + unit,
                    "measure it on the wedge, or give degrees per turn instead");
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R degreesPerTurn(DegreesPerTurn geometry);

        R pushScrew(PushScrew geometry);

        R turnbuckle(Turnbuckle geometry);
    }
}
