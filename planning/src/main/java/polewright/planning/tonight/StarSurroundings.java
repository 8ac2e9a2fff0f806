package polewright.planning.tonight;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.Constellation;
import polewright.sky.atlas.Constellations;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarColour;
import polewright.sky.body.PlanetAppearance;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * How to identify a star by its surroundings, as seen by an observer facing it now.
 *
 * @param colour to the eye; empty if unknown
 * @param constellation that contains it
 * @param isItsBrightest whether it is the brightest in that constellation
 * @param guides well-known stars nearby, the most useful first
 * @param lookalikes stars that could be mistaken for it
 * @param planets nearby planets, which look like stars
 */
public record StarSurroundings(
        Optional<StarColour> colour,
        Constellation constellation,
        boolean isItsBrightest,
        List<Neighbour> guides,
        List<Neighbour> lookalikes,
        List<Neighbour> planets) {
    private static final int MOST_GUIDES = 2;
    private static final double GUIDES_TO_MAGNITUDE = 2.2;
    private static final Angle GUIDES_WITHIN = Angle.ofDegrees(40);
    private static final double GUIDES_LEAST_ALTITUDE_DEG = 10;
    private static final double DEGREES_WORTH_A_MAGNITUDE = 12;
    private static final Angle LOOKALIKES_WITHIN = Angle.ofDegrees(10);
    private static final double LOOKALIKE_MAGNITUDES = 0.8;
    private static final Angle PLANETS_WITHIN = Angle.ofDegrees(25);
    private static final List<SolarSystemBody> STARLIKE =
            List.of(SolarSystemBody.VENUS, SolarSystemBody.JUPITER, SolarSystemBody.MARS, SolarSystemBody.SATURN);

    /**
     * Something near a star.
     *
     * @param side direction from the star
     * @param isBrighter than the star; empty if that changes from month to month
     */
    public record Neighbour(String name, Angle distance, RelativeDirection side, Optional<Boolean> isBrighter) {}

    public StarSurroundings {
        guides = List.copyOf(guides);
        lookalikes = List.copyOf(lookalikes);
        planets = List.copyOf(planets);
    }

    static StarSurroundings of(StarInView star, StarsInView stars, ObservingMoment moment) {
        Constellation constellation = constellation(star.star());
        SunGuard sun = SunGuard.at(moment);
        List<StarInView> alike = stars.lookalikes(star, LOOKALIKES_WITHIN, LOOKALIKE_MAGNITUDES).stream()
                .filter(other -> isAwayFrom(sun, other.airless()))
                .toList();
        return new StarSurroundings(
                StarColour.of(star.star()),
                constellation,
                isBrightest(star.star(), constellation),
                guides(star, stars)
                        .filter(guide -> !alike.contains(guide) && isAwayFrom(sun, guide.airless()))
                        .limit(MOST_GUIDES)
                        .map(guide -> neighbour(guide, star))
                        .toList(),
                alike.stream().map(other -> neighbour(other, star)).toList(),
                planets(star, moment, sun));
    }

    /** Anything near the Sun by day is not named, because an observer would look at it or point the finder at it. */
    private static boolean isAwayFrom(SunGuard sun, AirlessDirection direction) {
        return !sun.isSunUp() || sun.distance(direction).compareTo(SunGuard.KEEP_AWAY) >= 0;
    }

    private static Stream<StarInView> guides(StarInView star, StarsInView stars) {
        return stars.up().stream()
                .filter(other -> !other.equals(star) && other.magnitude() <= GUIDES_TO_MAGNITUDE)
                .filter(other -> other.altitude().degrees() >= GUIDES_LEAST_ALTITUDE_DEG)
                .filter(other -> other.separation(star).compareTo(GUIDES_WITHIN) < 0)
                .sorted(Comparator.comparingDouble(
                        other -> other.magnitude() + other.separation(star).degrees() / DEGREES_WORTH_A_MAGNITUDE));
    }

    private static Neighbour neighbour(StarInView other, StarInView star) {
        return new Neighbour(
                other.name(),
                other.separation(star),
                RelativeDirection.of(other.direction(), star.direction()),
                Optional.of(other.magnitude() < star.magnitude()));
    }

    private static List<Neighbour> planets(StarInView star, ObservingMoment moment, SunGuard sun) {
        return STARLIKE.stream()
                .filter(planet -> isAwayFrom(sun, moment.airless(SolarSystem.apparent(planet, moment))))
                .map(planet -> planet(planet, star, moment))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Neighbour> planet(SolarSystemBody planet, StarInView star, ObservingMoment moment) {
        RefractedDirection direction = moment.refracted(SolarSystem.apparent(planet, moment));
        Angle distance =
                new Angle(Vector3D.angle(direction.enu(), star.direction().enu()));
        if (direction.altitude().radians() < 0 || distance.compareTo(PLANETS_WITHIN) > 0) {
            return Optional.empty();
        }
        OptionalDouble magnitude = PlanetAppearance.at(planet, moment).magnitude();
        return Optional.of(new Neighbour(
                planet.label(),
                distance,
                RelativeDirection.of(direction, star.direction()),
                magnitude.isPresent() ? Optional.of(magnitude.getAsDouble() < star.magnitude()) : Optional.empty()));
    }

    private static Constellation constellation(NamedStar star) {
        return Constellations.bundled()
                .at(star.place().rightAscension(), star.place().declination());
    }

    private static boolean isBrightest(NamedStar star, Constellation constellation) {
        return NamedStars.bundled().all().stream()
                .takeWhile(other -> other.magnitude() < star.magnitude())
                .noneMatch(other -> constellation(other).equals(constellation));
    }
}
