package polewright.axis.work;

import java.time.Duration;
import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * Looking through an eyepiece.
 *
 * @param field true field, edge to edge
 * @param stay how long a centred object is to stay in it with nobody touching the mount
 * @param goToWithin how far from the middle a go-to may land; empty when the mount is pushed by hand
 */
public record Look(String name, Angle field, Duration stay, Optional<Angle> goToWithin, SkyRegion region)
        implements WorkItem {
    private static final Duration LONGEST = Duration.ofHours(12);

    public Look {
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
        if (goToWithin.isPresent()
                && !(goToWithin.get().radians() > 0 && goToWithin.get().degrees() <= 30)) {
            throw new InputRefused(
                    "a go-to within " + PlainNumber.of(goToWithin.get().arcminutes()) + " arcminutes for '" + name
                            + "' must be more than 0 and at most 1800",
                    "give how far from the middle it may land; half the finder's field is the most that helps");
        }
    }

    /** The same for another time in the field. */
    public Look withStay(Duration other) {
        return new Look(name, field, other, goToWithin, region);
    }
}
