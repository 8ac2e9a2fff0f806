package polewright.operations.work;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.work.SkyRegion;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.EntryNotice;
import polewright.operations.action.Unit;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.HourAnglesInput;
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
final class RegionArguments {
    private static final Argument<SkyBody> TARGET = Argument.option(
                    "target",
                    "Target",
                    "vega, M 42, jupiter, or right ascension and declination in degrees.",
                    new Words<>("BODY", BodyFinder::named))
            .otherwise("anything high enough");
    private static final Argument<Instant> AT =
            Argument.begins("When it begins").otherwise("now").seldom();
    private static final Argument<Double> ABOVE = Argument.option(
                    "above", "Anything above this altitude", "", Figure.of(Unit.DEGREES))
            .otherwise("30, if no other region is given")
            .seldom();
    private static final Argument<Boolean> TO_THE_POLE = Argument.option(
                    "to-the-pole", "Include the pole", "Otherwise the 10° around it are left out.", new Tick())
            .seldom();
    private static final Argument<Double> DECLINATION = Argument.option(
                    "declination",
                    "Objects at this declination",
                    "Together with the hours.",
                    Figure.signed(Unit.DEGREES))
            .seldom();
    private static final Argument<HourAnglesInput.HourAngles> HOURS = Argument.option(
                    "hours",
                    "Hours from the meridian",
                    "The earlier first: 2E,1.5W or -2,1.5.",
                    new Words<>("FROM,TO", new HourAnglesInput()::convert))
            .seldom();

    static final List<Argument<?>> ALL = List.of(TARGET, AT, ABOVE, TO_THE_POLE, DECLINATION, HOURS);

    private RegionArguments() {}

    /** The region that was given; a target is followed for this long. */
    static SkyRegion region(Entries entries, ActionContext context, Duration followed) {
        requireOneWay(entries);
        NightEvent.Begun begun = context.begun();
        Optional<SkyBody> target = entries.given(TARGET);
        if (target.isPresent()) {
            return track(target.get(), entries.given(AT).orElse(context.now()), begun, followed);
        }
        Optional<Double> declinationDeg = entries.given(DECLINATION);
        Optional<HourAnglesInput.HourAngles> hours = entries.given(HOURS);
        if (declinationDeg.isPresent() && hours.isPresent()) {
            double degrees = declinationDeg.get();
            return risen(
                    new SkyRegion.Track(
                            "declination " + (degrees < 0 ? "−" : "+") + PlainNumber.asTyped(Math.abs(degrees)) + "°",
                            Angle.ofDegrees(degrees),
                            hours.get().from(),
                            hours.get().to()),
                    begun,
                    context.now());
        }
        Angle lowest =
                entries.given(ABOVE).map(Angle::ofDegrees).orElseGet(SkyRegion.Above.THIRTY_DEGREES::lowestAltitude);
        return new SkyRegion.Above(lowest, entries.isTicked(TO_THE_POLE));
    }

    /** A target near the Sun, or one that is followed by day, is remarked on. */
    static List<EntryNotice> notices(Entries entries, ActionContext context, Duration followed) {
        return entries.given(TARGET).stream()
                .<EntryNotice>map(
                        body -> new EntryNotice.Followed(body, entries.given(AT).orElse(context.now()), followed))
                .toList();
    }

    private static void requireOneWay(Entries entries) {
        boolean hasTarget = entries.given(TARGET).isPresent();
        boolean hasDeclination = entries.given(DECLINATION).isPresent();
        boolean hasHours = entries.given(HOURS).isPresent();
        long ways = Stream.of(TARGET, ABOVE, DECLINATION)
                .filter(argument -> entries.given(argument).isPresent())
                .count();
        if (ways > 1) {
            throw new InputRefused(
                    "the part of the sky is given twice", "give only one of {target}, {declination} and {above}");
        }
        if (entries.isTicked(TO_THE_POLE) && (hasTarget || hasDeclination)) {
            throw new InputRefused(
                    "{to-the-pole} only goes with a lowest altitude", "leave out {target} and {declination}");
        }
        if (entries.given(AT).isPresent() && !hasTarget) {
            throw new InputRefused("{at} needs a target", "give {target}");
        }
        if (hasHours != hasDeclination) {
            throw new InputRefused(
                    hasDeclination ? "{declination} needs {hours}" : "{hours} needs {declination}",
                    "give both, or give {target}");
        }
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
                                + String.format(Locale.ROOT, "%.1f°)", altitude.degrees()),
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
