package polewright.web.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.mount.rig.View;
import polewright.operations.input.BodyFinder;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/**
 * A logged measurement as it was entered, to be corrected in its form.
 *
 * @param form the form for this measurement
 * @param values the entries, by field
 */
public record EnteredMeasurement(CommandForm form, Map<String, String> values) {
    // More digits than are ever typed, but few enough that 54.2 does not become 54.200000000000003.
    private static final MathContext FIGURES = new MathContext(9);

    public EnteredMeasurement {
        values = Map.copyOf(values);
    }

    /** Empty for a measurement that no form enters, such as camera frames. */
    public static Optional<EnteredMeasurement> of(NightEvent.Measurement measurement) {
        if (measurement instanceof NightEvent.StarCentred star) {
            return Optional.of(centring(star.centred()));
        }
        return measurement instanceof NightEvent.SightingTaken taken ? of(taken.sighting()) : Optional.empty();
    }

    /** The same entries, as a replacement for the measurement of this number. */
    public EnteredMeasurement replacing(long seq) {
        Map<String, String> more = new LinkedHashMap<>(values);
        more.put("instead-of", Long.toString(seq));
        return new EnteredMeasurement(form, more);
    }

    private static Optional<EnteredMeasurement> of(Sighting sighting) {
        if (sighting instanceof CompassBearing compass) {
            return Optional.of(new EnteredMeasurement(
                    SightingForms.COMPASS,
                    withSigma(
                            Map.of(
                                    "bearing", degrees(compass.magneticBearing()),
                                    "declination", degrees(compass.declination())),
                            compass.sigma(),
                            CompassBearing.USUAL_SIGMA)));
        } else if (sighting instanceof LevelledScale scale) {
            return Optional.of(new EnteredMeasurement(
                    SightingForms.SCALE,
                    withSigma(
                            Map.of("altitude", degrees(scale.altitude())), scale.sigma(), LevelledScale.USUAL_SIGMA)));
        } else if (sighting instanceof BodyBearing bearing) {
            return Optional.of(bearing(bearing));
        } else if (sighting instanceof BodyAltitude altitude) {
            return Optional.of(new EnteredMeasurement(
                    SightingForms.ALTITUDE,
                    withSigma(
                            Map.of(
                                    "star", typed(altitude.body()),
                                    "difference", degrees(altitude.axisAboveBody())),
                            altitude.sigma(),
                            BodyAltitude.USUAL_SIGMA)));
        } else if (sighting instanceof StillPoint still && still.distance().unit() == ReadLength.Unit.FIELDS) {
            return Optional.of(still(still));
        }
        return sighting instanceof StarDrift drift ? Optional.of(drift(drift)) : Optional.empty();
    }

    private static EnteredMeasurement bearing(BodyBearing bearing) {
        Map<String, String> values =
                withSigma(Map.of("angle", degrees(bearing.clockwise())), bearing.sigma(), BodyBearing.USUAL_SIGMA);
        if (bearing.line() == BodyBearing.Line.TOWARD_BODY) {
            values.put("star", typed(bearing.body()));
            return new EnteredMeasurement(SightingForms.BEARING, values);
        }
        if (bearing.body() == SolarSystemBody.MOON) {
            values.put("body", "moon");
        }
        return new EnteredMeasurement(SightingForms.SHADOW, values);
    }

    private static EnteredMeasurement still(StillPoint still) {
        Angle field = still.distance().perUnit();
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                "star", typed(still.star()),
                "distance", figure(still.distance().count()),
                "toward", figure(still.toward().hours()),
                "field", degrees(field)));
        putView(values, still.view());
        putSigma(values, still.sigma().radians() / field.radians(), StillPoint.USUAL_SIGMA_OF_FIELD);
        return new EnteredMeasurement(SightingForms.STILL, values);
    }

    private static EnteredMeasurement drift(StarDrift drift) {
        ReadLength moved = drift.drift();
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                "star", typed(drift.star()),
                "minutes", figure(drift.length().toMillis() / 60_000.0),
                "moved", figure(moved.count())));
        switch (moved.unit()) {
            case ARCSECONDS -> values.put("unit", "arcsec");
            case PIXELS -> {
                values.put("unit", "pixels");
                values.put("per", figure(moved.perUnit().arcseconds()));
            }
            case FIELDS -> {
                values.put("unit", "fields");
                values.put("field", degrees(moved.perUnit()));
            }
            case DIVISIONS -> values.put("per", figure(moved.perUnit().arcseconds()));
        }
        putDirection(values, drift.direction());
        putSigma(
                values,
                drift.sigma().radians() / moved.perUnit().radians(),
                StarDrift.usualSigma(moved).radians() / moved.perUnit().radians());
        return new EnteredMeasurement(SightingForms.DRIFT, values);
    }

    private static void putDirection(Map<String, String> values, DriftDirection direction) {
        if (direction instanceof DriftDirection.OnSky sky) {
            values.put("toward", sky.north() ? "north" : "south");
            if (sky.readAlong() != ReticleNorth.SKY) {
                values.put("reticle", sky.readAlong() == ReticleNorth.MOUNT ? "slow" : "unknown");
            }
        } else if (direction instanceof DriftDirection.TowardEdge edge) {
            values.put("toward", figure(edge.edge().hours()));
            putView(values, edge.view());
        } else if (direction instanceof DriftDirection.TowardEdgeGivenWest edge) {
            values.put("toward", figure(edge.edge().hours()));
            values.put("west", figure(edge.west().hours()));
            values.put("view", edge.mirrored() ? "mirrored" : "erect");
        }
    }

    private static EnteredMeasurement centring(CentredStar centred) {
        MountDisplay display = centred.display();
        Map<String, String> values = new LinkedHashMap<>(Map.of("body", typed(centred.star())));
        if (display instanceof MountDisplay.HourAngle read) {
            values.put("hour-angle", "yes");
            values.put("reads", degrees(read.hourAngle()) + "," + degrees(read.declination()));
        } else if (display instanceof MountDisplay.RightAscension read) {
            values.put("reads", degrees(read.rightAscension()) + "," + degrees(read.declination()));
            if (read.isJ2000()) {
                values.put("j2000", "yes");
            }
        }
        if (centred.isThroughPole()) {
            values.put("through-pole", "yes");
        }
        putSigma(values, centred.sigma().arcminutes(), CentredStar.USUAL_SIGMA.arcminutes());
        return new EnteredMeasurement(SightingForms.CENTRE, values);
    }

    private static void putView(Map<String, String> values, View view) {
        values.put("view", view.orientation().name().toLowerCase(Locale.ROOT));
        if (view.turned().radians() != 0) {
            values.put("turned", degrees(view.turned()));
        }
    }

    private static Map<String, String> withSigma(Map<String, String> values, Angle sigma, Angle usual) {
        Map<String, String> all = new LinkedHashMap<>(values);
        putSigma(all, sigma.degrees(), usual.degrees());
        return all;
    }

    /** A default uncertainty is left out, as when it was typed. */
    private static void putSigma(Map<String, String> values, double sigma, double usual) {
        if (!figure(sigma).equals(figure(usual))) {
            values.put("sigma", figure(sigma));
        }
    }

    /** A star known by name gives its name; any other, its coordinates. */
    private static String typed(SkyBody body) {
        if (!(body instanceof FixedStar star)) {
            return body.label();
        }
        try {
            if (new BodyFinder().convert(star.label()).equals(star)) {
                return star.label();
            }
        } catch (InputRefused unknownByThatName) {
            // The coordinates identify it.
        }
        return degrees(star.star().rightAscension()) + "," + degrees(star.star().declination());
    }

    private static String degrees(Angle angle) {
        return figure(angle.degrees());
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).round(FIGURES).stripTrailingZeros().toPlainString();
    }
}
