package polewright.cli;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.alignment.work.SkyRegion;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.HourAnglesInput;
import polewright.operations.input.UtcInput;
import polewright.report.text.AngleWords;
import polewright.report.text.Remark;
import polewright.report.text.SunCaution;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.BodyPosition;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SiderealRate;
import polewright.sky.time.SkyTime;

/**
 * The part of the sky that is observed: a target at a time, a declination over some hours, or everything high enough.
 */
final class RegionOptions {
    @Option(
            names = "--target",
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description = "The target: vega, \"M 42\", jupiter, or RA,DEC in degrees.")
    private @Nullable SkyBody target;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "When it begins: 2026-11-25T20:00Z. Default: now.")
    private @Nullable Instant at;

    @Option(
            names = "--above",
            paramLabel = "DEG",
            description = "Anything above this altitude. Default, without other limits: 30.")
    private @Nullable Double above;

    @Option(
            names = "--to-the-pole",
            description = "Include the 10 degrees around the pole, which are left out otherwise.")
    private boolean toThePole;

    @Option(names = "--declination", paramLabel = "DEG", description = "Objects at this declination; with --hours.")
    private @Nullable Double declination;

    @Option(
            names = "--hours",
            paramLabel = "FROM,TO",
            converter = HourAnglesInput.class,
            description = "Hours from the meridian, the earlier first: -2,1.5 or 2E,1.5W.")
    private HourAnglesInput.@Nullable HourAngles hours;

    private List<String> notes = List.of();

    /** Cautions about the Sun; called after {@link #region}. */
    List<String> notes() {
        return notes;
    }

    /** The region that was typed; a target is followed for this long. */
    SkyRegion region(Workbench bench, NightEvent.Begun begun, Duration followed) {
        int told = (target == null ? 0 : 1) + (above == null ? 0 : 1) + (declination == null ? 0 : 1);
        if (told > 1) {
            throw new InputRefused(
                    "the part of the sky is given twice", "give only one of --target, --declination and --above");
        }
        if (toThePole && (target != null || declination != null)) {
            throw new InputRefused(
                    "--to-the-pole only goes with a lowest altitude", "leave out --target and --declination");
        }
        if (at != null && target == null) {
            throw new InputRefused("--at needs a target", "add --target");
        }
        if ((hours == null) != (declination == null)) {
            throw new InputRefused(
                    hours == null ? "--declination needs --hours" : "--hours needs --declination",
                    "give both, or give --target");
        }
        if (target != null) {
            Instant from = at == null ? bench.now() : at;
            SkyRegion region = track(target, from, begun, followed);
            notes = SunCaution.whileFollowed(target, begun, from, followed).stream()
                    .map(Remark::line)
                    .toList();
            return region;
        }
        if (declination != null && hours != null) {
            return risen(
                    new SkyRegion.Track(
                            "declination " + (declination < 0 ? "−" : "+") + PlainNumber.asTyped(Math.abs(declination))
                                    + "°",
                            Angle.ofDegrees(declination),
                            hours.from(),
                            hours.to()),
                    begun,
                    bench.now());
        }
        Angle lowest = above == null ? SkyRegion.Above.THIRTY_DEGREES.lowestAltitude() : Angle.ofDegrees(above);
        return new SkyRegion.Above(lowest, toThePole);
    }

    private static SkyRegion track(SkyBody body, Instant from, NightEvent.Begun begun, Duration followed) {
        if (body == SolarSystemBody.SUN) {
            throw new InputRefused(
                    "the Sun cannot be a target here", "never point there without a proper solar filter");
        }
        HourAnglePlace place = BodyPosition.of(body, moment(begun, from)).hourAngle();
        Angle turned = SiderealRate.during(followed.toMillis() / 1000.0);
        return risen(
                new SkyRegion.Track(
                        body.label(),
                        place.declination(),
                        place.hourAngle(),
                        place.hourAngle().plus(turned)),
                begun,
                from);
    }

    /** The same track, if it stays above the horizon. */
    private static SkyRegion.Track risen(SkyRegion.Track track, NightEvent.Begun begun, Instant at) {
        ObservingMoment moment = moment(begun, at);
        for (Angle hourAngle : new Angle[] {track.from(), lowest(track), track.to()}) {
            Angle altitude = moment.airless(new HourAnglePlace(hourAngle, track.declination()))
                    .altitude();
            if (altitude.radians() <= 0) {
                throw new InputRefused(
                        track.label() + " is below the horizon " + when(hourAngle, track) + " (altitude "
                                + AngleWords.degrees(altitude) + ")",
                        "choose another time, or a target that is up");
            }
        }
        return track;
    }

    /** The lowest altitude of a track: at lower culmination if it passes through it, otherwise at an end. */
    private static Angle lowest(SkyRegion.Track track) {
        for (double culmination : new double[] {-180, 180, 540}) {
            if (track.from().degrees() <= culmination
                    && culmination <= track.to().degrees()) {
                return Angle.ofDegrees(culmination);
            }
        }
        return track.from();
    }

    private static String when(Angle hourAngle, SkyRegion.Track track) {
        return hourAngle.equals(track.from())
                ? "at the beginning"
                : hourAngle.equals(track.to()) ? "at the end" : "meanwhile";
    }

    private static ObservingMoment moment(NightEvent.Begun begun, Instant at) {
        return ObservingMoment.of(begun.site(), SkyTime.of(at), begun.weather());
    }
}
