package polewright.session.event;

import java.time.Duration;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The limits within which an event is accepted. */
final class EventBounds {
    // Closer to a pole of the Earth, azimuth is too ill-defined to set an axis, and no wedge tilts that far.
    private static final Angle HIGHEST_LATITUDE = Angle.ofDegrees(84);
    private static final double MOST_TURNS = 100;
    // A clock with an empty battery starts at its year of manufacture.
    private static final Duration MOST_CLOCK_ERROR = Duration.ofDays(366 * 50);

    private EventBounds() {}

    static void requireSettable(Rig rig, Site site) {
        if (!rig.kind().hasPolarAxis()) {
            throw new InputRefused(
                    "a " + rig.kind().words() + " has no polar axis to set",
                    "put the fork on a wedge, or use only where and ground tonight");
        }
        if (site.poleAltitude().compareTo(HIGHEST_LATITUDE) > 0) {
            throw new InputRefused(
                    "latitude " + PlainNumber.asTyped(site.latitude().degrees())
                            + " is beyond 84 degrees, where a wedge cannot be set by azimuth and altitude",
                    "check that latitude comes before longitude");
        }
    }

    /**
     * @param turns of one screw, all legs together
     * @param back the last leg
     */
    static void requireTurns(String screw, double turns, double back) {
        requireFew(screw, "", turns);
        requireFew(screw, " back", back);
        requireFew(screw, " there, before those back", turns - back);
    }

    /**
     * @param sigma 1 sigma of the turns
     */
    static void requireSigma(String screw, double sigma) {
        if (!(sigma >= 0 && sigma <= MOST_TURNS)) {
            throw new InputRefused(
                    "an uncertainty of " + PlainNumber.asTyped(sigma) + " turns of the " + screw
                            + " screw is outside 0 to 100",
                    "give 1 sigma, or leave it out for turns counted by hand");
        }
    }

    private static void requireFew(String screw, String which, double turns) {
        if (!(Math.abs(turns) <= MOST_TURNS)) {
            throw new InputRefused(
                    PlainNumber.asTyped(turns) + " turns of the " + screw + " screw" + which + " are beyond 100",
                    "count whole turns and fractions, clockwise positive");
        }
    }

    static void requireClockError(long first, long last, Duration shift) {
        if (last < first) {
            throw new InputRefused("event " + last + " is not after event " + first, "give the first, then the last");
        }
        if (shift.isZero() || shift.abs().compareTo(MOST_CLOCK_ERROR) > 0) {
            throw new InputRefused(
                    "a clock error of " + PlainNumber.of(shift.toSeconds() / 60.0)
                            + " minutes is more than the limit of 50 years",
                    "give the minutes to add, negative if the clock was ahead");
        }
    }

    static void requireTurn(LoggedEvent logged) {
        if (!(logged.event() instanceof NightEvent.ScrewsTurned)) {
            throw new InputRefused(
                    "event " + logged.seq() + " is not a turn of the screws, so no turn can replace it",
                    "give the number of a turn, as the log shows it");
        }
    }

    static void requireMeasurement(LoggedEvent logged) {
        if (!(logged.event() instanceof NightEvent.Measurement)) {
            throw new InputRefused(
                    "event " + logged.seq() + " is neither a sighting nor a centring, so nothing can replace it",
                    "give the number of a sighting, as the log shows it");
        }
    }
}
