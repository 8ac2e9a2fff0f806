package polewright.data;

import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.place.CatalogueStar;

/**
 * Bright companions of fast stars, which share their motion: Alpha Centauri B, 61 Cygni B.
 *
 * <p>A Hipparcos star to V 8, from 10″ to 60″ away from a star of more than 0.3″ a year, gets the motion of that
 * star. The orbital motion is ignored: 0.3″ a year for Alpha Centauri B, 0.15″ for 61 Cygni B.
 */
final class Companions {
    private static final double NEAREST_ARCSEC = 10;
    private static final double FURTHEST_ARCSEC = 60;
    private static final double FAINTEST = 8;
    private static final double SLOWEST_MAS_PER_YEAR = 300;

    private Companions() {}

    static List<NamedStar> of(List<NamedStar> withMotion, HipparcosStars hipparcos) {
        List<NamedStar> companions = new ArrayList<>();
        for (NamedStar star : withMotion) {
            CatalogueStar place = star.place();
            double speed = Math.hypot(place.properMotionRaMasPerYear(), place.properMotionDecMasPerYear());
            if (speed < SLOWEST_MAS_PER_YEAR) {
                continue;
            }
            double[] unit = StarPlaces.unit(
                    place.rightAscension().degrees(), place.declination().degrees());
            hipparcos.places().within(FURTHEST_ARCSEC, unit, i -> {
                HipparcosStars.Star other = hipparcos.stars().get(i);
                boolean apart = hipparcos.places().arcsecFrom(i, unit) > NEAREST_ARCSEC;
                boolean itself = star.designations().contains("HIP " + other.number());
                boolean listed = withMotion.stream()
                        .anyMatch(moving -> moving.designations().contains("HIP " + other.number()));
                if (apart && !itself && !listed && other.magnitude() <= FAINTEST) {
                    companions.add(goingWith(place, other));
                }
            });
        }
        return companions;
    }

    private static NamedStar goingWith(CatalogueStar primary, HipparcosStars.Star star) {
        return new NamedStar(
                star.names(),
                star.numbers(),
                new CatalogueStar(
                        Angle.ofDegrees(star.raDeg()),
                        Angle.ofDegrees(star.decDeg()),
                        primary.properMotionRaMasPerYear(),
                        primary.properMotionDecMasPerYear(),
                        primary.parallaxMas(),
                        primary.radialVelocityKmPerSecond()),
                star.magnitude(),
                true);
    }
}
