package polewright.simulation.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.sighting.StillPoint;
import polewright.drawing.chart.FieldChart;
import polewright.drawing.chart.RockedField;
import polewright.drawing.chart.ViewOfSky;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Optic;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedObserver;
import polewright.simulation.TubeOnFork;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;
import polewright.sky.body.FixedStar;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * The view through an optic of a hidden wedge while the tube is swung: the true field, with the usual error of an eye
 * that estimates the centre of rotation.
 */
final class EyepieceView {
    private static final Angle ROCKED = Angle.ofDegrees(12);
    private static final int MOST_STARS = 120;
    private static final double KNOWN_DOWN_TO = 6;
    private static final double SAME_STAR_RAD = Angle.ofArcseconds(20).radians();
    // Limits the tube's misalignment, so that the centre of rotation is visible.
    private static final double FARTHEST_STILL_OF_FIELD = 0.25;

    private EyepieceView() {}

    static ObservedReadings.WhileRocking of(
            HiddenWedge wedge, TubeOnFork tube, Optic optic, ObservingMoment moment, SimulatedObserver observer) {
        ViewOfSky sky = new ViewOfSky(new RefractedDirection(wedge.axis()), optic.view());
        Vector2D still = still(tube, optic);
        Optional<Known> known = known(sky, still, optic, moment);
        Vector2D error = known.map(
                        star -> read(star, wedge, optic, moment, observer).subtract(star.place()))
                .orElse(Vector2D.ZERO);
        List<RockedField.Star> stars = new ArrayList<>();
        StarField found = found(sky, still, optic, moment);
        for (int i = 0; i < found.size() && stars.size() < MOST_STARS; i++) {
            Vector2D place =
                    sky.placeOf(moment.refracted(moment.apparent(found.star(i).place())));
            Optional<String> name = known.filter(star -> star.place().distance(place) < SAME_STAR_RAD)
                    .map(Known::name);
            Vector2D seen = place.add(error);
            if (still.add(seen).getNorm() <= optic.field().radians() / 2) {
                stars.add(new RockedField.Star(seen, found.magnitude(i), name));
            }
        }
        return new ObservedReadings.WhileRocking(
                optic,
                new RockedField(optic.field(), still, stars, ROCKED),
                known.map(star -> rounded(star.name(), star.place().add(error), optic)));
    }

    /** A star that commands find by name, and its position relative to the centre of rotation, radians. */
    private record Known(String name, CatalogueStar star, Vector2D place) {}

    /** The brightest named star in the field. */
    private static Optional<Known> known(ViewOfSky sky, Vector2D still, Optic optic, ObservingMoment moment) {
        return NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= KNOWN_DOWN_TO)
                .filter(NamedStars.bundled()::isFoundByItsLabel)
                .map(star -> known(star, sky, moment))
                .filter(star -> still.add(star.place()).getNorm()
                        <= optic.field().radians() * (0.5 - StillPoint.USUAL_SIGMA_OF_FIELD))
                .findFirst();
    }

    private static Known known(NamedStar star, ViewOfSky sky, ObservingMoment moment) {
        return new Known(star.label(), star.place(), sky.placeOf(moment.refracted(moment.apparent(star.place()))));
    }

    /** The apparent position of the star relative to the centre of rotation, (right, up) in the view, radians. */
    private static Vector2D read(
            Known star, HiddenWedge wedge, Optic optic, ObservingMoment moment, SimulatedObserver observer) {
        StillPoint seen =
                observer.stillPoint(wedge, moment.time().utc(), new FixedStar(star.name(), star.star()), optic);
        double direction = seen.toward().clockwiseFromTop().radians();
        double distance = seen.distance().angle().radians();
        return new Vector2D(distance * Math.sin(direction), distance * Math.cos(direction));
    }

    private static ObservedReadings.StarPlace rounded(String name, Vector2D place, Optic optic) {
        double clock = ClockDirection.ofAngle(new Angle(Math.atan2(place.getX(), place.getY())))
                .hours();
        double tenths = Math.rint(clock * 10) / 10;
        return new ObservedReadings.StarPlace(
                name, Math.rint(100 * place.getNorm() / optic.field().radians()) / 100, tenths == 0 ? 12 : tenths);
    }

    /** In the home position the tube is parallel to the axis except for its misalignments. */
    private static Vector2D still(TubeOnFork tube, Optic optic) {
        Vector2D misalignment =
                new Vector2D(tube.cone().radians(), tube.declinationAxisTilt().radians());
        double farthest = optic.field().radians() * FARTHEST_STILL_OF_FIELD;
        return misalignment.getNorm() <= farthest
                ? misalignment
                : misalignment.scalarMultiply(farthest / misalignment.getNorm());
    }

    private static StarField found(ViewOfSky sky, Vector2D still, Optic optic, ObservingMoment moment) {
        Vector3D middle = moment.airless(sky.middle()).enu();
        CatalogueStar there =
                moment.catalogueDirection(moment.apparent(moment.hourAngle(new AirlessDirection(middle))));
        double radius = optic.field().radians() * (0.5 + 2 * StillPoint.USUAL_SIGMA_OF_FIELD) + still.getNorm();
        return StarAtlas.bundled()
                .starsWithin(
                        there.rightAscension(),
                        there.declination(),
                        new Angle(radius),
                        FieldChart.usualLimit(optic.field()));
    }
}
