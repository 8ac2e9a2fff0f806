package polewright.report.scene;

import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.sighting.BodyBearing;
import polewright.drawing.sighting.SightingSketch;
import polewright.drawing.sighting.SkyInView;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.NumberInput;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.time.SkyTime;

/**
 * A sketch of a sighting from what has been typed so far. Empty fields are filled with an example: the reading for a
 * well-aligned axis, or a usual value.
 *
 * @param typed by option, as the sighting's command has them
 */
public record SightingScene(Map<String, String> typed, NightEvent.Begun begun, Instant now) {
    private static final String IN_RADII = "radii";
    private static final double NEAR_POLE_RAD = 1e-6;
    private static final String VIEW = "view";

    public SightingScene {
        typed = Map.copyOf(typed);
    }

    /**
     * The sketch.
     *
     * @param command the sighting's word: {@code compass}, {@code drift}; {@code centre} is one too
     * @return empty if there is no sketch for it, or what is typed cannot be drawn
     */
    public Optional<SightingSketch> sketch(String command) {
        try {
            return switch (command) {
                case "compass" -> Optional.of(compass());
                case "scale" -> Optional.of(scale());
                case "shadow" -> Optional.of(shadow());
                case "bearing" ->
                    Optional.of(new SightingSketch.FromLine(
                            BodyBearing.Line.TOWARD_BODY,
                            star("the star"),
                            Angle.ofDegrees(figure("angle", -40, 360))));
                case "altitude" -> Optional.of(altitude());
                case "still" -> Optional.of(still());
                case "drift" -> Optional.of(drift());
                case "centre" ->
                    Optional.of(new SightingSketch.Centred(
                            text("body", "the star"), Angle.ofArcminutes(positive("sigma", 1, 600))));
                default -> Optional.empty();
            };
        } catch (InputRefused | NumberFormatException e) {
            return Optional.empty();
        }
    }

    private Site site() {
        return begun.site();
    }

    private SightingSketch compass() {
        Angle declination = typed.getOrDefault("declination", "").isBlank()
                ? MagneticModel.wmm2025().field(site(), now).declination()
                : Angle.ofDegrees(figure("declination", 0, 180));
        Angle right = (site().isNorthern() ? Angle.ZERO : Angle.HALF_TURN).minus(declination);
        double bearing = figure("bearing", right.wrappedPositive().degrees(), 360);
        return new SightingSketch.Compass(Angle.ofDegrees(bearing), declination, site().isNorthern());
    }

    private SightingSketch scale() {
        boolean isFromZenith = "yes".equals(typed.get("from-zenith"));
        double latitude = site().poleAltitude().degrees();
        double reading = figure("altitude", isFromZenith ? 90 - latitude : latitude, 90);
        if (reading < 0) {
            throw new NumberFormatException("a wedge's scale begins at 0");
        }
        return new SightingSketch.Scale(Angle.ofDegrees(reading), isFromZenith, site().isNorthern());
    }

    private SightingSketch shadow() {
        boolean isMoon = "moon".equals(typed.get("body"));
        return new SightingSketch.FromLine(
                BodyBearing.Line.SHADOW, isMoon ? "the Moon" : "the Sun", Angle.ofDegrees(figure("angle", 25, 360)));
    }

    private SightingSketch altitude() {
        double axis = site().poleAltitude().degrees();
        double difference = figure("difference", Math.min(12, axis - 5), 90);
        if (axis - difference < -5 || axis - difference > 95) {
            throw new NumberFormatException("that star is below the horizon");
        }
        return new SightingSketch.Difference(star("the star"), Angle.ofDegrees(axis), Angle.ofDegrees(difference));
    }

    private SightingSketch still() {
        return new SightingSketch.Still(
                star("the star"), positive("distance", 0.25, 1), clock("toward", 4.5), view(), site().isNorthern());
    }

    private SightingSketch drift() {
        String toward = text("toward", "south").toLowerCase(Locale.ROOT);
        SightingSketch.Toward way = toward.equals("north") || toward.equals("n")
                ? new SightingSketch.SkyPoint(true)
                : toward.equals("south") || toward.equals("s")
                        ? new SightingSketch.SkyPoint(false)
                        : new SightingSketch.Edge(new ClockDirection(NumberInput.of(toward)));
        return new SightingSketch.Drift(
                star("the star"), positive("moved", isInRadii() ? 0.2 : 2.5, 1e6), unit(), way, points());
    }

    private boolean isInRadii() {
        return typed.getOrDefault("unit", "").equals(IN_RADII);
    }

    private String unit() {
        return switch (typed.getOrDefault("unit", "")) {
            case "fields" -> "field widths";
            case IN_RADII -> "of the radius";
            case "arcsec" -> "arcseconds";
            case "pixels" -> "pixels";
            default -> "divisions";
        };
    }

    private SkyInView points() {
        View view = view();
        if (!typed.getOrDefault("west", "").isBlank()) {
            return SkyInView.of(clock("west", 3), view.orientation() == Orientation.MIRRORED);
        }
        return seen().map(star -> SkyInView.about(star, site(), view))
                .orElseGet(() -> SkyInView.onMeridian(site(), view));
    }

    /**
     * The star's direction, if it is known, above the horizon, and not at the pole or the zenith, where upright is
     * undefined.
     */
    private Optional<Vector3D> seen() {
        String name = text("star", "");
        if (name.isEmpty()) {
            return Optional.empty();
        }
        SkyBody body;
        try {
            body = BodyFinder.named(name);
        } catch (InputRefused e) {
            return Optional.empty();
        }
        if (body == SolarSystemBody.SUN) {
            return Optional.empty();
        }
        ObservingMoment moment = ObservingMoment.of(site(), SkyTime.of(now), begun.weather());
        Vector3D enu = moment.refracted(Ephemeris.apparent(body, moment)).enu();
        Vector3D pole =
                new Vector3D(0, site().latitude().cos(), site().latitude().sin());
        boolean hasUpright = enu.crossProduct(pole).getNorm() > NEAR_POLE_RAD
                && enu.crossProduct(Vector3D.PLUS_K).getNorm() > NEAR_POLE_RAD;
        return Optional.of(enu).filter(up -> up.getZ() > 0 && hasUpright);
    }

    /** The view of the named optic, or as typed. */
    private View view() {
        View ofOptic = begun.rig().optic(text("with", "")).map(Optic::view).orElse(View.NAKED_EYE);
        String said = text(VIEW, "");
        return said.isEmpty() ? ofOptic : View.of(Orientation.valueOf(said.toUpperCase(Locale.ROOT)));
    }

    private ClockDirection clock(String option, double usual) {
        return new ClockDirection(positive(option, usual, 12));
    }

    private String star(String unnamed) {
        String name = text("star", unnamed);
        return name.length() > 20 ? name.substring(0, 20) : name;
    }

    private String text(String option, String empty) {
        String value = typed.getOrDefault(option, "").strip();
        return value.isEmpty() ? empty : value;
    }

    private double positive(String option, double usual, double most) {
        double value = figure(option, usual, most);
        if (value < 0) {
            throw new NumberFormatException(option + " is below 0");
        }
        return value;
    }

    private double figure(String option, double usual, double most) {
        String value = typed.getOrDefault(option, "").strip();
        double number = value.isEmpty() ? usual : NumberInput.of(value);
        if (!(Math.abs(number) <= most)) {
            throw new NumberFormatException(option + " is beyond " + most);
        }
        return number;
    }
}
