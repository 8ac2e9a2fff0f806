package polewright.app.command;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.app.Workbench;
import polewright.app.input.BodyFinder;
import polewright.app.text.AngleWords;
import polewright.night.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.angle.Sexagesimal;
import polewright.sky.atlas.Constellation;
import polewright.sky.atlas.Constellations;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.time.LeapSeconds;

@Command(name = "where", description = "Where a star, planet or object stands on the sky.")
final class WhereCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description =
                    "sun, moon, a planet, a star (vega, \"alp Lyr\"), an object (\"M 31\"), or RA,DEC in degrees.")
    private SkyBody body;

    @Option(
            names = "--ut1-utc",
            paramLabel = "SECONDS",
            description = "UT1-UTC from the IERS bulletin. Left out it is 0, which may turn the sky by up to 13\".")
    private double ut1MinusUtcSeconds;

    @Mixin
    private SkyOptions sky;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    WhereCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Optional<NightEvent.Begun> remembered =
                sky.givenSite().isPresent() ? Optional.empty() : log.lastBegun(workbench);
        ObservingMoment moment = sky.moment(workbench, remembered, ut1MinusUtcSeconds);
        ApparentPlace place = Ephemeris.apparent(body, moment);
        Whereabouts seen = new Whereabouts(
                place,
                moment.hourAngle(place),
                moment.airless(place),
                moment.refracted(place),
                Ephemeris.sunDistance(place, moment));
        List<String> notes = notes(moment, seen);
        if (output.isJson()) {
            output.print(workbench, json(moment, seen, notes));
        } else {
            output.say(workbench, words(moment, seen));
            output.say(workbench, notes);
        }
        return 0;
    }

    private record Whereabouts(
            ApparentPlace place,
            HourAnglePlace hourAngle,
            AirlessDirection airless,
            RefractedDirection refracted,
            Angle sunDistance) {}

    private ObjectNode json(ObservingMoment moment, Whereabouts seen, List<String> notes) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("body", body.label());
        node.put("at", moment.time().utc().toString());
        node.put("ra_deg", seen.place().rightAscension().degrees());
        node.put("dec_deg", seen.place().declination().degrees());
        node.put("ha_deg", seen.hourAngle().hourAngle().degrees());
        node.put("az_deg", seen.airless().azimuth().degrees());
        node.put("alt_deg", seen.airless().altitude().degrees());
        node.put("alt_apparent_deg", seen.refracted().altitude().degrees());
        node.put("sun_distance_deg", seen.sunDistance().degrees());
        node.put("constellation", constellation(moment, seen).abbreviation());
        notes.forEach(node.putArray("notes")::add);
        return node;
    }

    private List<String> words(ObservingMoment moment, Whereabouts seen) {
        List<String> lines = new ArrayList<>();
        Angle azimuth = seen.airless().azimuth();
        Angle altitude = seen.refracted().altitude();
        String name =
                Character.toUpperCase(body.label().charAt(0)) + body.label().substring(1);
        lines.add(
                altitude.radians() < 0
                        ? name + " is " + AngleWords.degrees(altitude.abs()) + " below the horizon, "
                                + AngleWords.compassPoint(azimuth) + " (azimuth " + AngleWords.bearing(azimuth) + ")."
                        : "Look " + AngleWords.compassPoint(azimuth) + ", azimuth " + AngleWords.bearing(azimuth) + ", "
                                + AngleWords.degrees(altitude) + " up, for " + body.label() + ".");
        lines.add("At " + moment.time().utc() + ", "
                + AngleWords.hourAngle(seen.hourAngle().hourAngle()) + "; true altitude "
                + AngleWords.degrees(seen.airless().altitude()) + ".");
        lines.add("Right ascension " + Sexagesimal.hours(seen.place().rightAscension(), 1) + ", declination "
                + Sexagesimal.degrees(seen.place().declination(), 0) + " (of date, for the mount's circles), in "
                + constellation(moment, seen).name() + ".");
        if (body != SolarSystemBody.SUN) {
            lines.add("From the Sun: " + AngleWords.degrees(seen.sunDistance()) + ".");
        }
        return lines;
    }

    private static Constellation constellation(ObservingMoment moment, Whereabouts seen) {
        var direction = moment.catalogueDirection(seen.place());
        return Constellations.bundled().at(direction.rightAscension(), direction.declination());
    }

    private List<String> notes(ObservingMoment moment, Whereabouts seen) {
        List<String> notes = new ArrayList<>();
        if (body == SolarSystemBody.SUN) {
            notes.add("CARE  Never look at the Sun, or point tube or finder at it, without a proper solar filter.");
        } else {
            notes.addAll(SunCaution.near(moment, seen.place()));
        }
        LeapSeconds.note(moment.time().utc()).ifPresent(notes::add);
        return notes;
    }
}
