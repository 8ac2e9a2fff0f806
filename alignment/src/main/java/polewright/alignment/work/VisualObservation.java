package polewright.alignment.work;

import java.time.Duration;
import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * Observing through an eyepiece.
 *
 * @param field true field, edge to edge
 * @param stay how long a centred object is to stay in the field without touching the mount
 * @param finding how an object is brought into the field
 */
public record VisualObservation(String name, Angle field, Duration stay, Finding finding, SkyRegion region)
        implements WorkItem {
    private static final Duration LONGEST = Duration.ofHours(12);

    public VisualObservation {
        if (!(field.degrees() > 0 && field.degrees() <= 60)) {
            throw new InputRefused(
                    "a field of " + PlainNumber.of(field.degrees()) + " degrees for '" + name
                            + "' must be more than 0 and at most 60",
                    "give the true field: eyepiece apparent field / magnification");
        }
        if (stay.isNegative() || stay.isZero() || stay.compareTo(LONGEST) > 0) {
            throw new InputRefused(
                    "staying in the field for " + PlainNumber.of(stay.toMillis() / 60000.0) + " minutes for '" + name
                            + "' must be more than 0 and at most 720",
                    "give how long an object should stay in the field untouched; 15 minutes is a long look");
        }
        if (finding instanceof Finding.GoTo goTo
                && !(goTo.within().radians() > 0 && goTo.within().degrees() <= 30)) {
            throw new InputRefused(
                    "a go-to within " + PlainNumber.of(goTo.within().arcminutes()) + " arcminutes for '" + name
                            + "' must be more than 0 and at most 1800",
                    "give how far from the centre it may land; more than half the finder's field does not help");
        }
    }

    /** How an object is brought into the field. */
    public sealed interface Finding {
        /**
         * The mount slews to it, having been set on a star elsewhere.
         *
         * @param within largest acceptable distance from the field centre
         */
        record GoTo(Angle within) implements Finding {}

        /**
         * The observer pushes the tube from star to star. The axis does not matter for finding anything, but a hand
         * leaves the object off centre, which reduces the room it has to drift in.
         */
        record ByHand() implements Finding {
            /** Fraction of half the field; a hand leaves most objects within the middle half (common practice). */
            private static final double OFF_MIDDLE = 0.5;
        }

        /** Not specified: the object begins at the field centre. */
        record Centred() implements Finding {}
    }

    /** How far the object may drift before it leaves the field. */
    public Angle driftRoom() {
        Angle half = field.times(0.5);
        return finding instanceof Finding.ByHand ? half.times(1 - Finding.ByHand.OFF_MIDDLE) : half;
    }

    /** Largest acceptable go-to error; empty if no go-to is used. */
    public Optional<Angle> goToWithin() {
        return finding instanceof Finding.GoTo goTo ? Optional.of(goTo.within()) : Optional.empty();
    }

    /** A copy with another time in the field. */
    public VisualObservation withStay(Duration other) {
        return new VisualObservation(name, field, other, finding, region);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.visualObservation(this);
    }
}
