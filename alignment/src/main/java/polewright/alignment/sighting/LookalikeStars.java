package polewright.alignment.sighting;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Stars that an observer may have mistaken for the named one: bright neighbours, and stars at a similar place on the
 * other side of the meridian. Catalogue places are accurate enough: a degree of precession does not change which stars
 * are confused.
 */
final class LookalikeStars {
    private static final double BRIGHT = 3;
    // A neighbour can be mistaken for the star if it is about as bright, or brighter.
    private static final double FAINTER_BY = 1.5;
    private static final int MOST_OF_EACH_SORT = 6;
    private static final Angle NEIGHBOURHOOD = Angle.ofDegrees(25);
    private static final Angle ALIKE = Angle.ofDegrees(25);
    private static final Angle LOWEST = Angle.ofDegrees(5);
    // The star itself in another catalogue.
    private static final Angle SAME_STAR = Angle.ofArcminutes(10);

    private LookalikeStars() {}

    /**
     * The same sighting of each lookalike, as the mistake of having taken it for the named star.
     *
     * @param sightingOf gives the same sighting of another star
     */
    static List<Misreading> misreadings(
            SkyBody named, Instant at, Site site, Weather weather, Function<SkyBody, Sighting> sightingOf) {
        return of(named, at, site, weather).stream()
                .map(other -> new Misreading(
                        "the star was " + other.label() + ", not " + named.label(), sightingOf.apply(other)))
                .toList();
    }

    /**
     * The lookalikes of a star at that time and place, nearest first to the star's own position or its mirror image;
     * none for a planet, which is hard to mistake.
     */
    private static List<SkyBody> of(SkyBody named, Instant at, Site site, Weather weather) {
        if (!(named instanceof FixedStar star)) {
            return List.of();
        }
        ObservingMoment moment = Sighted.moment(at, site, weather);
        Angle sidereal = moment.siderealTime();
        Vector3D zenith = ApparentPlace.of(sidereal, site.latitude()).unit();
        Vector3D place = unit(star.star().rightAscension(), star.star().declination());
        // The same hour angle on the other side.
        Vector3D mirrored = unit(
                sidereal.times(2).minus(star.star().rightAscension()),
                star.star().declination());
        double asBright = magnitude(place) + FAINTER_BY;
        List<NamedStar> up = NamedStars.bundled().all().stream()
                .takeWhile(other -> other.magnitude() <= Math.max(asBright, BRIGHT))
                .filter(other -> isWithin(place(other), zenith, Angle.QUARTER_TURN.minus(LOWEST)))
                .filter(other -> !isWithin(place(other), place, SAME_STAR))
                .toList();
        return Stream.concat(near(up, place, NEIGHBOURHOOD, asBright), near(up, mirrored, ALIKE, BRIGHT))
                .sorted(Comparator.comparingDouble(Near::cosine).reversed())
                .map(Near::star)
                .distinct()
                .<SkyBody>map(other -> new FixedStar(other.label(), other.place()))
                .toList();
    }

    private record Near(NamedStar star, double cosine) {}

    private static Stream<Near> near(List<NamedStar> stars, Vector3D place, Angle radius, double faintest) {
        return stars.stream()
                .filter(other -> other.magnitude() <= faintest)
                .map(other -> new Near(other, place(other).dotProduct(place)))
                .filter(near -> near.cosine() > radius.cos())
                .sorted(Comparator.comparingDouble(Near::cosine).reversed())
                .limit(MOST_OF_EACH_SORT);
    }

    /** Magnitude of the named star; one without a name is assumed to be as faint as the search limit. */
    private static double magnitude(Vector3D place) {
        return NamedStars.bundled().all().stream()
                .filter(other -> isWithin(place(other), place, SAME_STAR))
                .findFirst()
                .map(NamedStar::magnitude)
                .orElse(BRIGHT);
    }

    private static boolean isWithin(Vector3D one, Vector3D other, Angle radius) {
        return one.dotProduct(other) > radius.cos();
    }

    private static Vector3D place(NamedStar star) {
        return unit(star.place().rightAscension(), star.place().declination());
    }

    private static Vector3D unit(Angle rightAscension, Angle declination) {
        return ApparentPlace.of(rightAscension, declination).unit();
    }
}
