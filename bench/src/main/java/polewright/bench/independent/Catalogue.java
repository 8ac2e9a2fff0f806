package polewright.bench.independent;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import polewright.bench.independent.truth.Place;
import polewright.bench.independent.truth.Star;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;

/** The named stars of Polewright's catalogue, as data. */
final class Catalogue {
    private static final double FAINTEST = 6;
    private static final double POLE_STAR_DEG = 88;
    private static final List<Star> STARS = NamedStars.bundled().all().stream()
            .filter(star -> star.magnitude() <= FAINTEST)
            .map(Catalogue::star)
            .toList();
    private static final Map<String, Star> BY_NAME =
            STARS.stream().collect(Collectors.toMap(Star::name, Function.identity(), (brighter, fainter) -> brighter));

    private Catalogue() {}

    /** Those visible to the naked eye, brightest first. */
    static List<Star> stars() {
        return STARS;
    }

    static Optional<Star> find(String name) {
        return Optional.ofNullable(BY_NAME.get(name));
    }

    /** The brightest within two degrees of the truly elevated pole. */
    static Star poleStar(Place place) {
        return STARS.stream()
                .filter(star -> Math.toDegrees(star.declination()) * place.sign() > POLE_STAR_DEG)
                .findFirst()
                .orElseThrow();
    }

    /** As the person logs it. */
    static FixedStar written(Star star) {
        return new FixedStar(
                star.name(),
                new CatalogueStar(
                        Angle.ofRadians(star.rightAscension()),
                        Angle.ofRadians(star.declination()),
                        star.motionRaMasPerYear(),
                        star.motionDecMasPerYear(),
                        star.parallaxMas(),
                        star.velocityKmPerSecond()));
    }

    private static Star star(NamedStar named) {
        CatalogueStar place = named.place();
        return new Star(
                named.label(),
                place.rightAscension().radians(),
                place.declination().radians(),
                place.properMotionRaMasPerYear(),
                place.properMotionDecMasPerYear(),
                place.parallaxMas(),
                place.radialVelocityKmPerSecond(),
                named.magnitude());
    }
}
