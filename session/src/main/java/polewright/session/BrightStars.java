package polewright.session;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.advice.AdvisedStar;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * The stars suitable for a sighting: easy to find, at altitudes where a drift constrains the axis, and the pole star.
 */
public final class BrightStars {
    private static final double EASY_MAGNITUDE = 3.5;
    private static final double FAINTEST_POLE_STAR = 6;
    // A star closer to the pole than this is useful to find the centre of rotation, however faint: Polaris, Sigma
    // Octantis.
    private static final Angle ABOUT_THE_POLE = Angle.ofDegrees(2);
    // Closer to the pole than this a star is slow to set on and no better for a drift than any other.
    private static final Angle FARTHEST_NORTH_OR_SOUTH = Angle.ofDegrees(60);
    // Below this altitude, refraction changes a drift by more than a visual tolerance.
    private static final Angle LOWEST = Angle.ofDegrees(22);
    // Above this altitude, observing is awkward for fork and neck.
    private static final Angle HIGHEST = Angle.ofDegrees(78);

    // Upper limit of precession, proper motion and refraction in the century covered.
    private static final Angle PRECESSION_AT_MOST = Angle.ofDegrees(2);

    private BrightStars() {}

    private record Candidate(NamedStar star, Vector3D catalogueUnit) {
        static Candidate of(NamedStar star) {
            return new Candidate(
                    star,
                    ApparentPlace.of(star.place().rightAscension(), star.place().declination())
                            .unit());
        }
    }

    /** Stars that commands find by the name given. */
    private static final class Named {
        static final List<Candidate> BRIGHT = NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= EASY_MAGNITUDE)
                .filter(star -> star.place().declination().abs().compareTo(FARTHEST_NORTH_OR_SOUTH) <= 0)
                .filter(NamedStars.bundled()::isFoundByItsLabel)
                .map(Candidate::of)
                .toList();
        static final List<NamedStar> POLAR = NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= FAINTEST_POLE_STAR && isAboutAPole(star))
                .filter(NamedStars.bundled()::isFoundByItsLabel)
                .toList();

        private static boolean isAboutAPole(NamedStar star) {
            return Angle.QUARTER_TURN.minus(star.place().declination().abs()).compareTo(ABOUT_THE_POLE) < 0;
        }
    }

    /** The stars that are up, starting with the pole star if it is up. */
    public static List<AdvisedStar> upAt(ObservingMoment moment) {
        Vector3D zenith = ApparentPlace.of(moment.siderealTime(), moment.site().latitude())
                .unit();
        return Stream.concat(
                        poleStar(moment).stream(),
                        Named.BRIGHT.stream()
                                .filter(star -> mayBeBetween(star, zenith))
                                .map(star -> seen(star.star(), moment))
                                .filter(s -> isBetween(s, LOWEST)))
                .toList();
    }

    /** The brightest star within two degrees of the elevated pole, if it can be observed. */
    public static Optional<AdvisedStar> poleStar(ObservingMoment moment) {
        return Named.POLAR.stream()
                .filter(star ->
                        star.place().declination().radians() * moment.site().hemisphereSign() > 0)
                .findFirst()
                .map(star -> seen(star, moment))
                .filter(s -> isBetween(s, Angle.ZERO));
    }

    /** A cheap test on the catalogue position: most bright stars are far from useful directions. */
    private static boolean mayBeBetween(Candidate star, Vector3D zenith) {
        double sine = star.catalogueUnit().dotProduct(zenith);
        return sine > LOWEST.minus(PRECESSION_AT_MOST).sin()
                && sine < HIGHEST.plus(PRECESSION_AT_MOST).sin();
    }

    private static boolean isBetween(AdvisedStar star, Angle lowest) {
        Angle altitude = star.direction().altitude();
        return altitude.compareTo(lowest) > 0 && altitude.compareTo(HIGHEST) < 0;
    }

    private static AdvisedStar seen(NamedStar star, ObservingMoment moment) {
        var apparent = moment.apparent(star.place());
        RefractedDirection direction = moment.refracted(apparent);
        return new AdvisedStar(
                star.label(), star.designations().get(0), star.magnitude(), moment.hourAngle(apparent), direction);
    }
}
