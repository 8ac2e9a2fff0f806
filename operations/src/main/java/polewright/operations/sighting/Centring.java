package polewright.operations.sighting;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import polewright.drawing.sighting.SightingSketch;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.MountReadingInput;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/** A centred star and the mount's reading. Three or more give the mount's errors and the polar axis. */
public final class Centring {
    public static final Argument<SkyBody> BODY = Argument.positional(
            "body",
            "Star",
            "Such as capella; also a planet, an object, or right ascension and declination in degrees (ICRS).",
            new Words<>("BODY", BodyFinder::named));
    public static final Argument<MountReadingInput.Typed> READS = Argument.option(
            "reads",
            "The mount shows",
            "5h17m38s,+46d12m36s, or both in degrees.",
            new Words<>("RA,DEC", new MountReadingInput()::convert));
    private static final Argument<Boolean> HOUR_ANGLE =
            Argument.option("hour-angle", "It shows hour angle, not right ascension", "West is positive.", new Tick());
    private static final Argument<Boolean> J2000 = Argument.option(
                    "j2000", "It shows J2000.0 coordinates", "Not those of date.", new Tick())
            .seldom();
    private static final Argument<Boolean> THROUGH_POLE = Argument.option(
                    "through-pole", "The fork swung through the pole to get there", "", new Tick())
            .seldom();
    public static final Argument<Double> SIGMA = Argument.option(
                    "sigma", "Uncertainty", "1 sigma.", Figure.of(Unit.ARCMINUTES))
            .otherwise("1, usual by eye")
            .seldom();

    public static final Action ACTION = Action.of(
                    "centre",
                    List.of("centre"),
                    "A star was centred",
                    "Never centre the Sun. Centre the star in the eyepiece, then copy the mount's reading.",
                    Centring::centred)
            .taking(BODY, READS, HOUR_ANGLE, J2000, THROUGH_POLE, SIGMA, Replacement.INSTEAD_OF)
            .at(Action.Timing.MEASURED)
            .forExample("", "capella --reads 5h17m38s,+46d12m36s")
            .forExample("", "rigel --reads 78.71,-8.12 --j2000")
            .forExample("", "vega --hour-angle --reads 2h10m,+38d48m --at 2026-11-25T20:00Z")
            .forExample("", "--frame vega-field.fits --reads 18h37m41s,+38d48m")
            .forExample("", "--csv centrings.csv");

    private Centring() {}

    private static List<NightEvent> centred(Entries entries, ActionContext context) {
        if (entries.given(BODY).isEmpty() || entries.given(READS).isEmpty()) {
            throw new InputRefused("the star and the mount's reading are both needed", "give {body} and {reads}");
        }
        SkyBody star = entries.of(BODY);
        requireNotSun(star);
        MountReadingInput.Typed reads = entries.of(READS);
        MountDisplay display = entries.isTicked(HOUR_ANGLE)
                ? new MountDisplay.HourAngle(reads.first(), reads.declination())
                : new MountDisplay.RightAscension(reads.first(), reads.declination(), entries.isTicked(J2000));
        Angle sigma = entries.given(SIGMA).map(Angle::ofArcminutes).orElse(CentredStar.USUAL_SIGMA);
        if (!(sigma.arcminutes() >= 0.001 && sigma.degrees() <= 5)) {
            throw new InputRefused(
                    "an uncertainty of " + PlainNumber.asTyped(sigma.arcminutes())
                            + " arcminutes is outside 0.001 to 300",
                    "1 is usual by eye");
        }
        CentredStar centred = new CentredStar(
                Replacement.time(entries, context), star, display, entries.isTicked(THROUGH_POLE), sigma);
        return List.of(Replacement.event(
                new NightEvent.StarCentred(centred), entries.given(Replacement.INSTEAD_OF), context.night()));
    }

    /** Refuses the Sun. */
    public static void requireNotSun(SkyBody star) {
        if (star == SolarSystemBody.SUN) {
            throw new InputRefused(
                    "the Sun must never be centred",
                    "keep the tube capped by day, or use a proper filter and a planet");
        }
    }

    /** The arguments with which a logged centring was entered. */
    public static Map<String, String> typed(CentredStar centred) {
        MountDisplay display = centred.display();
        Map<String, String> values = new LinkedHashMap<>(Map.of(BODY.name(), TypedText.body(centred.star())));
        if (display instanceof MountDisplay.HourAngle read) {
            values.put(HOUR_ANGLE.name(), Tick.YES);
            values.put(READS.name(), reading(read.hourAngle(), read.declination()));
        } else if (display instanceof MountDisplay.RightAscension read) {
            values.put(READS.name(), reading(read.rightAscension(), read.declination()));
            if (read.isJ2000()) {
                values.put(J2000.name(), Tick.YES);
            }
        }
        if (centred.isThroughPole()) {
            values.put(THROUGH_POLE.name(), Tick.YES);
        }
        return TypedText.withSigma(values, centred.sigma().arcminutes(), CentredStar.USUAL_SIGMA.arcminutes());
    }

    private static String reading(Angle first, Angle declination) {
        return TypedText.degrees(first) + "," + TypedText.degrees(declination);
    }

    /** The star at the centre of the field, with what has been entered so far. */
    public static SightingSketch sketch(Entries entries) {
        return new SightingSketch.Centred(
                entries.given(BODY).map(SkyBody::label).orElse("the star"),
                entries.given(SIGMA).map(Angle::ofArcminutes).orElse(CentredStar.USUAL_SIGMA));
    }
}
