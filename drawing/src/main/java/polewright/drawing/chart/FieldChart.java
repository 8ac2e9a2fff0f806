package polewright.drawing.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.DeepSkyList;
import polewright.sky.atlas.DeepSkyObject;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;
import polewright.sky.body.BodyAppearance;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;

/**
 * The field of one optic with a target at its centre.
 *
 * @param target the target
 * @param moment time and place
 * @param field true field, edge to edge
 * @param sky the view, centred on the target
 * @param faintest magnitude of the faintest star drawn
 * @param stars brightest first
 * @param objects deep-sky objects and bodies of the solar system, including the target if it is one
 */
public record FieldChart(
        SkyBody target,
        ObservingMoment moment,
        Angle field,
        ViewOfSky sky,
        double faintest,
        List<Star> stars,
        List<Mark> objects) {
    // More would be a grey field at any print size.
    private static final int MOST_STARS = 260;
    private static final int MOST_NAMES = 8;
    private static final int MOST_OBJECTS = 8;
    private static final double ATLAS_LIMIT = 12;
    private static final double NAMED_DOWN_TO = 6;
    private static final double SAME_STAR_RAD = Angle.ofArcseconds(20).radians();

    /**
     * One star.
     *
     * @param place (right, up) from the centre, radians
     * @param name for the few brightest that have one
     */
    public record Star(Vector2D place, double magnitude, Optional<String> name) {}

    /**
     * Something with an angular size.
     *
     * @param place (right, up) from the centre, radians
     * @param radius half its largest extent; 0 if unknown
     */
    public record Mark(String label, Vector2D place, Angle radius) {}

    public FieldChart {
        stars = List.copyOf(stars);
        objects = List.copyOf(objects);
    }

    /**
     * The usual limiting magnitude of an optic with that field: 9 in a finder of 6°, 11 in one degree (common practice;
     * a wider field means a smaller aperture).
     */
    public static double usualLimit(Angle field) {
        return Math.max(6, Math.min(ATLAS_LIMIT, 11 - 2.6 * Math.log10(Math.max(0.4, field.degrees()))));
    }

    /**
     * Builds the chart.
     *
     * @param faintest magnitude, at most 12; in a crowded field fewer stars are drawn, the brightest
     */
    public static FieldChart of(SkyBody target, ObservingMoment moment, Angle field, View view, double faintest) {
        ApparentPlace place = Ephemeris.apparent(target, moment);
        ViewOfSky sky = new ViewOfSky(moment.refracted(place), view);
        CatalogueStar middle = moment.catalogueDirection(place);
        Angle radius = field.times(0.5);
        StarField found = StarAtlas.bundled()
                .starsWithin(middle.rightAscension(), middle.declination(), radius.times(1.02), faintest);
        int drawn = Math.min(MOST_STARS, found.size());
        List<Named> names = named(moment, sky, radius);
        List<Star> stars = new ArrayList<>();
        for (int i = 0; i < drawn; i++) {
            Vector2D at =
                    sky.placeOf(moment.refracted(moment.apparent(found.star(i).place())));
            if (at.getNorm() <= radius.radians()) {
                stars.add(new Star(at, found.magnitude(i), nameAt(at, names)));
            }
        }
        double shown = drawn == found.size() || drawn == 0 ? faintest : found.magnitude(drawn - 1);
        return new FieldChart(target, moment, field, sky, shown, stars, marks(target, moment, sky, radius, shown));
    }

    /** Hour angle and declination of the target, without refraction. */
    public HourAnglePlace hourAngle() {
        return moment.hourAngle(Ephemeris.apparent(target, moment));
    }

    private record Named(String name, Vector2D place) {}

    private static List<Named> named(ObservingMoment moment, ViewOfSky sky, Angle radius) {
        return NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= NAMED_DOWN_TO)
                .sorted(Comparator.comparingDouble(NamedStar::magnitude))
                .map(star -> new Named(star.label(), sky.placeOf(moment.refracted(moment.apparent(star.place())))))
                .filter(star -> star.place().getNorm() <= radius.radians())
                .limit(MOST_NAMES)
                .toList();
    }

    private static Optional<String> nameAt(Vector2D place, List<Named> names) {
        return names.stream()
                .filter(named -> named.place().distance(place) < SAME_STAR_RAD)
                .map(Named::name)
                .findFirst();
    }

    private static List<Mark> marks(
            SkyBody target, ObservingMoment moment, ViewOfSky sky, Angle radius, double faintest) {
        List<Mark> marks = new ArrayList<>();
        for (SolarSystemBody body : SolarSystemBody.values()) {
            BodyAppearance seen = SolarSystem.appearance(body, moment);
            Vector2D at = sky.placeOf(moment.refracted(seen.place()));
            if (at.getNorm() <= radius.radians()) {
                marks.add(new Mark(body.label(), at, seen.semiDiameter()));
            }
        }
        Angle declination =
                moment.catalogueDirection(Ephemeris.apparent(target, moment)).declination();
        Angle nearby = radius.plus(Angle.ofArcminutes(5));
        DeepSkyList.bundled().all().stream()
                .filter(object -> object.label().equals(target.label())
                        || object.magnitude().orElse(Double.POSITIVE_INFINITY) <= faintest)
                // A cheap test before positions are computed for thousands of objects.
                .filter(object ->
                        object.place().declination().minus(declination).abs().compareTo(nearby) <= 0)
                .sorted(Comparator.comparing(
                                (DeepSkyObject object) -> !object.label().equals(target.label()))
                        .thenComparing(object -> object.magnitude().orElse(Double.POSITIVE_INFINITY)))
                .map(object -> mark(object, moment, sky))
                .filter(mark -> mark.place().getNorm() <= radius.radians())
                .limit(MOST_OBJECTS)
                .forEach(marks::add);
        return marks;
    }

    private static Mark mark(DeepSkyObject object, ObservingMoment moment, ViewOfSky sky) {
        return new Mark(
                object.label(),
                sky.placeOf(moment.refracted(moment.apparent(object.place()))),
                Angle.ofArcminutes(object.majorArcmin().orElse(0) / 2));
    }
}
