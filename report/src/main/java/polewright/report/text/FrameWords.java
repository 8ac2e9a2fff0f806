package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.FrameChecks;
import polewright.alignment.camera.FrameFinding;
import polewright.alignment.camera.InferredDrive;
import polewright.alignment.camera.PeriodicError;
import polewright.alignment.camera.TrackedSequence;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.TurnedFrames;
import polewright.session.event.NightEvent;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Results from camera frames in words. */
public final class FrameWords {
    private static final double WHOLE_ARCSECONDS = 9.95;

    private FrameWords() {}

    static String event(TurnedFrames sighting) {
        return sighting.frames().size() + " camera frames, right ascension turned "
                + AngleWords.degrees(AxisFromFrames.largestTurnOf(sighting.frames()))
                + (sighting.afterScrews().isPresent() ? ", and one more after the screws were turned" : "");
    }

    static String event(FieldDrift drift) {
        return "drift of a field: " + arcseconds(drift.north().abs())
                + (drift.north().radians() >= 0 ? " north" : " south") + " and "
                + arcseconds(drift.east().abs())
                + (drift.east().radians() >= 0 ? " east" : " west") + " in "
                + PlainNumber.of(drift.length().toMillis() / 60000.0) + " minutes";
    }

    /** What looks wrong in frames that are logged: one line each, or none. */
    public static List<Remark> notes(NightEvent event, Site site) {
        if (event instanceof NightEvent.SightingTaken taken && taken.sighting() instanceof TurnedFrames frames) {
            return FrameChecks.of(AxisFromFrames.of(site, frames.frames()), frames.drive()).stream()
                    .map(finding -> Remark.note(of(finding)))
                    .toList();
        }
        return List.of();
    }

    /** One finding: what is observed, its possible meaning, and what to do. */
    public static String of(FrameFinding finding) {
        return finding.accept(new Finding());
    }

    /** The drive's state, and how it is known. */
    public static String of(InferredDrive found) {
        if (found.drive() == Drive.NOT_TOLD) {
            return "The frames do not show whether the drive was on; the axis does not depend on it.";
        }
        return "The drive was " + word(found.drive()) + (found.seen() ? ", from the frames" : ", as given")
                + "; the axis does not depend on it.";
    }

    /** Drift and periodic error of a tracked field, several lines. */
    public static List<String> of(TrackedSequence sequence) {
        List<String> lines = new ArrayList<>();
        lines.add(rate("Declination", sequence.north(), "north", "south") + ": this measures the axis.");
        lines.add(rate("Right ascension", sequence.east(), "east", "west") + ": this includes the drive rate.");
        PeriodicError worm = sequence.worm();
        String spread = "Periodic error in right ascension, scaled to the equator: "
                + arcseconds(worm.atEquator(worm.peakToPeak())) + " peak to peak";
        lines.add(worm.wave()
                .map(wave -> spread + ", main period " + wave.period().toSeconds() + " s, "
                        + arcseconds(worm.atEquator(wave.amplitude())) + " amplitude.")
                .orElse(spread + "; no single period is dominant."));
        return lines;
    }

    /** Remaining turns of both screws: {@code altitude 1.30 clockwise, azimuth 0.25 counter-clockwise}. */
    static String both(FollowedScrews.Orders orders) {
        return "altitude " + turns(orders.altitude().remaining()) + ", azimuth "
                + turns(orders.azimuth().remaining());
    }

    private static String rate(String what, TrackedSequence.Drift drift, String positive, String negative) {
        return String.format(
                Locale.ROOT,
                "%s drifts %.2f″ ± %.2f″ per minute %s",
                what,
                drift.perMinute().abs().arcseconds(),
                drift.sigmaPerMinute().arcseconds(),
                drift.perMinute().radians() >= 0 ? positive : negative);
    }

    private static String turns(double turns) {
        return String.format(Locale.ROOT, "%.2f %s", Math.abs(turns), turns >= 0 ? "clockwise" : "counter-clockwise");
    }

    private static String word(Drive drive) {
        return switch (drive) {
            case TRACKING -> "tracking";
            case STANDING -> "off";
            case NOT_TOLD -> "not told";
        };
    }

    /** Arcseconds below an arcminute, otherwise as in {@link AngleWords}. */
    static String size(Angle angle) {
        return angle.abs().arcminutes() < 1 ? arcseconds(angle.abs()) : AngleWords.size(angle);
    }

    private static String arcseconds(Angle angle) {
        double arcsec = angle.arcseconds();
        return String.format(Locale.ROOT, arcsec >= WHOLE_ARCSECONDS ? "%.0f″" : "%.1f″", arcsec);
    }

    private static String times(double factor) {
        return String.format(Locale.ROOT, factor < WHOLE_ARCSECONDS ? "%.1f" : "%.0f", factor);
    }

    private static final class Finding implements FrameFinding.Visitor<String> {
        @Override
        public String unchecked(FrameFinding.Unchecked finding) {
            return "two frames always fit some axis, so nothing checks them. A third, with right ascension turned"
                    + " further, would show whether"
                    + " the mount, declination or the camera moved.";
        }

        @Override
        public String smallTurn(FrameFinding.SmallTurn small) {
            return "right ascension was turned by only " + AngleWords.degrees(small.turn())
                    + ". Turn by 30 to 90 degrees for a more accurate axis.";
        }

        @Override
        public String disturbed(FrameFinding.Disturbed disturbed) {
            return DisturbanceWords.of(disturbed);
        }

        @Override
        public String doesNotClose(FrameFinding.DoesNotClose open) {
            return DisturbanceWords.of(open);
        }

        @Override
        public String notRigid(FrameFinding.NotRigid bent) {
            return "the frames disagree by up to " + size(bent.farthest()) + " (frame " + bent.frame() + "), "
                    + times(bent.sigmas()) + " times their own uncertainties: fork, tube or camera flexes a"
                    + " little. The uncertainty of the axis allows for that.";
        }

        @Override
        public String sunTooHigh(FrameFinding.SunTooHigh sun) {
            return "at the time of frame " + sun.frame() + " the Sun was at " + AngleWords.degrees(sun.sunAltitude())
                    + ", so no stars could be seen. Check the clock, its zone and the site.";
        }

        @Override
        public String belowHorizon(FrameFinding.BelowHorizon under) {
            return "the field of frame " + under.frame() + " was "
                    + AngleWords.degrees(under.altitude().abs())
                    + " below the horizon at its time. Check the clock, its zone and the site.";
        }

        @Override
        public String farApartInTime(FrameFinding.FarApartInTime far) {
            return String.format(
                    Locale.ROOT,
                    "the frames span %.1f hours, long enough for a mount to settle. Take them within minutes.",
                    far.span().toMinutes() / 60.0);
        }

        @Override
        public String farFromPole(FrameFinding.FarFromPole far) {
            return "the axis would point " + AngleWords.degrees(far.distance())
                    + " from the pole. Check the clock and the site, and that nothing but right ascension was turned.";
        }

        @Override
        public String neitherTracksNorStands(FrameFinding.NeitherTracksNorStands odd) {
            return "after frame " + odd.after() + " the mount turned " + size(odd.turnedWest())
                    + " while the sky turned " + size(odd.skyTurned())
                    + ". It was neither stopped nor tracking. Check the clock and the drive rate.";
        }

        @Override
        public String driveNotAsTold(FrameFinding.DriveNotAsTold other) {
            return "the drive was " + word(other.found()) + ", not " + word(other.told())
                    + " as given. The axis does not depend on it.";
        }

        @Override
        public String rightAscensionTurned(FrameFinding.RightAscensionTurned turned) {
            return "right ascension turned by " + size(turned.west())
                    + (turned.west().radians() >= 0 ? " west" : " east")
                    + " as well, or the camera rolled. The first does no harm; after the second, start again.";
        }

        @Override
        public String movedTooFar(FrameFinding.MovedTooFar far) {
            return "the axis is " + AngleWords.degrees(far.distance())
                    + " from where it was found, farther than most wedges go. If the screws moved it there, turn"
                    + " them back;"
                    + " if declination or the mount was moved, take two new frames.";
        }
    }
}
