package polewright.web.form;

import static polewright.web.form.Field.option;
import static polewright.web.form.Field.positional;

import java.util.List;
import java.util.stream.Stream;
import polewright.web.form.Field.Choice;
import polewright.web.form.Field.Figure;
import polewright.web.form.Field.Option;
import polewright.web.form.Field.Tick;
import polewright.web.form.Field.Words;

/** Forms for observations and readings at the wedge; each describes what to look for. */
public final class SightingForms {
    static final Figure DEGREES = new Figure("°");
    static final Figure DEGREES_EITHER_WAY = new Figure("°", true);
    private static final Field SIGMA =
            option("sigma", "Uncertainty", "Empty: the usual value.", DEGREES).seldom();
    private static final Field INSTEAD_OF = option(
                    "instead-of",
                    "Replaces sighting number",
                    "Only to correct one that was entered wrongly.",
                    new Figure(""))
            .seldom();
    static final Field STAR = positional("star", "Star", "Such as polaris, rigel, or \"alp Lyr\".", new Words())
            .required();
    private static final Field OPTIC =
            option("with", "Seen through", "An optic of the rig, such as finder.", new Words());
    private static final Field FIELD =
            option("field", "Or the true field, edge to edge", "Only if no optic is named.", DEGREES);
    private static final Field VIEW = option(
            "view",
            "The view is",
            "",
            new Choice(List.of(
                    new Option("", "as entered for this optic"),
                    new Option("erect", "erect, as by eye"),
                    new Option("inverted", "upside down"),
                    new Option("mirrored", "mirrored, by a star diagonal"))));
    private static final Field TURNED = option(
                    "turned",
                    "The view is rotated by",
                    "Clockwise, such as by a diagonal set sideways.",
                    DEGREES_EITHER_WAY)
            .seldom();

    public static final CommandForm COMPASS = sighting(
            "compass",
            "Read the compass",
            "Sight along the polar axis toward the elevated pole. Keep the compass an arm's length from steel.",
            positional("bearing", "Bearing", "From magnetic north, clockwise.", DEGREES)
                    .required(),
            option("declination", "Magnetic declination", "Empty: computed for site and date.", DEGREES_EITHER_WAY),
            SIGMA);
    public static final CommandForm SCALE = sighting(
            "scale",
            "Read level and scale",
            "Level the base first. Then read the wedge's altitude scale.",
            positional("altitude", "Altitude on the scale", "", DEGREES).required(),
            option("from-zenith", "The scale counts down from the zenith", "", new Tick()),
            option("from-horizon", "The scale counts from the horizon", "", new Tick())
                    .seldom(),
            SIGMA);
    public static final CommandForm SHADOW = sighting(
            "shadow",
            "Measure from a shadow",
            "Never look at the Sun or point tube or finder toward it: keep them capped. Work with the shadow of a"
                    + " plumb line on the ground.",
            positional("angle", "Angle from the shadow to the axis", "Clockwise, seen from above.", DEGREES_EITHER_WAY)
                    .required(),
            option(
                    "body",
                    "What casts the shadow",
                    "",
                    new Choice(List.of(new Option("", "the Sun"), new Option("moon", "the Moon")))),
            SIGMA);
    public static final CommandForm BEARING = sighting(
            "bearing",
            "Measure from a star's bearing",
            "The horizontal angle from the direction of a star to the axis.",
            STAR,
            positional("angle", "Angle from the star to the axis", "Clockwise, seen from above.", DEGREES_EITHER_WAY)
                    .required(),
            SIGMA);
    public static final CommandForm ALTITUDE = sighting(
            "altitude",
            "Measure from a star's altitude",
            "Lay one inclinometer along the axis, then along the tube with the star centred.",
            STAR,
            positional("difference", "Altitude of the axis minus that of the star", "", DEGREES_EITHER_WAY)
                    .required(),
            SIGMA);
    public static final CommandForm STILL = sighting(
            "still",
            "Find the centre of rotation",
            "Point the tube along the polar axis and swing it back and forth in right ascension. The whole field"
                    + " turns around"
                    + " one point. Where is the star from it?",
            STAR,
            option("distance", "From the centre of rotation to the star", "", new Figure("field widths"))
                    .required(),
            option("toward", "Direction, as on a clock face", "12 is the top; 4.5 is half past four.", new Figure("h"))
                    .required(),
            OPTIC,
            FIELD,
            VIEW,
            TURNED,
            option("sigma", "Uncertainty of the position", "", new Figure("field widths"))
                    .seldom());
    public static final CommandForm DRIFT = sighting(
            "drift",
            "Watch a star drift",
            "Let the mount track. Watch how far the star drifts north or south; drift east or west does not count.",
            STAR,
            option("minutes", "Time watched", "", new Figure("min")).required(),
            option(
                            "moved",
                            "Drift",
                            "0 if none. With a plain crosshair, 0.2 is a fifth of the way from the centre to the"
                                    + " edge, 1 is out of the field.",
                            new Figure(""))
                    .required(),
            option(
                    "unit",
                    "Counted in",
                    "",
                    new Choice(List.of(
                            new Option("", "divisions of the reticle"),
                            new Option("radii", "fractions of the way from centre to edge"),
                            new Option("fields", "field widths"),
                            new Option("arcsec", "arcseconds"),
                            new Option("pixels", "pixels")))),
            option("per", "One division or pixel", "Only if not known from the optic.", new Figure("″")),
            option("toward", "Toward", "North or south, or an edge as on a clock face, such as 6.", new Words())
                    .required(),
            option(
                    "reticle",
                    "How the reticle line was set",
                    "Only for a drift north or south. Some degrees off the pole it matters.",
                    new Choice(List.of(
                            new Option("", "a star ran along it, drive off"),
                            new Option("slow", "a star was moved along it by slow motion"),
                            new Option("unknown", "not known")))),
            option("west", "Where stars leave with the drive off", "A clock direction; for any view.", new Figure("h")),
            OPTIC,
            FIELD,
            VIEW,
            TURNED,
            option("sigma", "Uncertainty of the drift", "In the unit above.", new Figure(""))
                    .seldom());
    public static final CommandForm CENTRE = new CommandForm(
            "centre",
            "A star was centred",
            "Never centre the Sun. Centre the star in the eyepiece, then copy the mount's reading.",
            List.of("centre"),
            List.of(
                    positional("body", "Star", "Such as capella.", new Words()).required(),
                    option("reads", "The mount shows", "5h17m38s,+46d12m36s", new Words())
                            .required(),
                    option("hour-angle", "It shows hour angle, not right ascension", "", new Tick()),
                    option("j2000", "It shows J2000.0 coordinates", "", new Tick())
                            .seldom(),
                    option("through-pole", "The fork swung through the pole to get there", "", new Tick())
                            .seldom(),
                    option("sigma", "Uncertainty", "1 is usual by eye.", new Figure("′"))
                            .seldom(),
                    INSTEAD_OF),
            "Log it",
            true);

    private static final List<CommandForm> ALL = List.of(COMPASS, SCALE, SHADOW, STILL, DRIFT, BEARING, ALTITUDE);

    private SightingForms() {}

    /** The sightings that measure the axis, the coarse ones first. */
    static List<CommandForm> all() {
        return ALL;
    }

    private static CommandForm sighting(String kind, String title, String intro, Field... fields) {
        List<Field> all =
                Stream.concat(Stream.of(fields), Stream.of(INSTEAD_OF)).toList();
        return new CommandForm(kind, title, intro, List.of("sight", kind), all, "Log this sighting", true);
    }
}
