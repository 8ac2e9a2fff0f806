package polewright.simulation.camera;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.AtlasStar;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/** The stars whose light reaches the detector, each with the path of its image. */
final class StarsInView {
    // Over this time neither a trail's curvature nor the periodic error (one period is some minutes) departs
    // noticeably from a parabola.
    private static final double SECONDS_PER_SECTION = 60;
    // An image that stays within this distance is drawn in one place.
    private static final double STILL_PIXELS = 0.01;
    // Wide enough for the wings of a bright star beyond the edge.
    private static final double MARGIN_PIXELS = 40;

    private final Exposure exposure;
    private final SkyView middle;
    private final List<SkyView> views;

    StarsInView(Exposure exposure, SkyView middle) {
        this.exposure = exposure;
        this.middle = middle;
        this.views = views(exposure, middle);
    }

    /** The stars of the atlas, brightest first. */
    List<StarImage> ofAtlas(StarAtlas atlas, double faintestMagnitude) {
        CatalogueStar centre = centre();
        StarField field = atlas.starsWithin(centre.rightAscension(), centre.declination(), radius(), faintestMagnitude);
        return IntStream.range(0, field.size())
                .parallel()
                .mapToObj(i -> image(field.number(i), field.star(i)))
                .flatMap(Optional::stream)
                .toList();
    }

    /** The invented stars, too faint for the atlas. */
    List<StarImage> beyondAtlas(double faintestMagnitude) {
        List<AtlasStar> faint = new ArrayList<>();
        FaintStars.visit(
                centre(),
                radius(),
                faintestMagnitude,
                (place, magnitude) -> faint.add(new AtlasStar(place, magnitude)));
        return faint.parallelStream()
                .map(star -> image(TrueStar.OF_NO_ATLAS, star))
                .flatMap(Optional::stream)
                .toList();
    }

    private CatalogueStar centre() {
        Projection projection = middle.projection();
        return middle.icrsAt(projection.centreX(), projection.centreY());
    }

    private Optional<StarImage> image(int number, AtlasStar star) {
        ApparentPlace place = middle.moment().apparent(star.place());
        RefractedDirection seen = middle.moment().refracted(place);
        if (seen.altitude().radians() <= 0) {
            return Optional.empty();
        }
        double[] xs = new double[views.size()];
        double[] ys = new double[views.size()];
        double[] pixel = new double[2];
        for (int i = 0; i < xs.length; i++) {
            // The sky turns, but apparent places stay as at the middle: aberration changes by 0.01" in an hour.
            SkyView view = views.get(i);
            if (!view.toPixel(view.moment().refracted(place), pixel)) {
                return Optional.empty();
            }
            xs[i] = pixel[0];
            ys[i] = pixel[1];
        }
        Detector detector = exposure.camera().detector();
        if (!touches(xs, detector.width()) || !touches(ys, detector.height())) {
            return Optional.empty();
        }
        double dimmed = star.magnitude() + exposure.sky().extinction(seen.altitude());
        double electrons = exposure.camera().electronsPerSecond(dimmed) * exposure.seconds();
        return Optional.of(new StarImage(number, star.magnitude(), electrons, xs, ys));
    }

    private static boolean touches(double[] along, int size) {
        double least = Arrays.stream(along).min().orElseThrow();
        double most = Arrays.stream(along).max().orElseThrow();
        return most > -MARGIN_PIXELS && least < size + MARGIN_PIXELS;
    }

    /** From the centre to the farthest corner, plus the sky's rotation and refraction. */
    private Angle radius() {
        Detector detector = exposure.camera().detector();
        Projection projection = middle.projection();
        double corner = 0;
        for (int i = 0; i < 4; i++) {
            Vector3D direction = projection.toDirection(
                    i % 2 == 0 ? -MARGIN_PIXELS : detector.width() + MARGIN_PIXELS,
                    i < 2 ? -MARGIN_PIXELS : detector.height() + MARGIN_PIXELS);
            corner = Math.max(corner, Vector3D.angle(direction, Vector3D.PLUS_K));
        }
        double refraction = Math.min(Math.toRadians(0.7), 0.2 * corner);
        double turned = CameraPath.SIDEREAL_RAD_PER_SECOND * exposure.seconds();
        return new Angle(Math.min(Math.PI, corner + refraction + turned));
    }

    private static List<SkyView> views(Exposure exposure, SkyView middle) {
        int sections = (int) Math.ceil(exposure.seconds() / SECONDS_PER_SECTION);
        // An even number of steps, so that the middle is one of the places.
        int steps = 2 * sections;
        List<SkyView> all = IntStream.rangeClosed(0, steps)
                .mapToObj(
                        i -> i == sections ? middle : SkyView.of(exposure, (i - sections) * exposure.seconds() / steps))
                .toList();
        return moves(all, middle, exposure.camera().detector()) ? all : List.of(middle);
    }

    private static boolean moves(List<SkyView> views, SkyView middle, Detector detector) {
        double[] pixel = new double[2];
        double right = detector.width() - 1.0;
        double bottom = detector.height() - 1.0;
        double[][] watched = {{0, 0}, {right, 0}, {0, bottom}, {right, bottom}, {right / 2, bottom / 2}};
        for (double[] place : watched) {
            double column = place[0];
            double row = place[1];
            Vector3D enu = middle.cameraToEnu().applyTo(middle.projection().toDirection(column, row));
            ObservingMoment moment = middle.moment();
            ApparentPlace looked = moment.apparent(moment.hourAngle(moment.airless(new RefractedDirection(enu))));
            for (SkyView view : views) {
                if (!view.toPixel(view.moment().refracted(looked), pixel)
                        || Math.hypot(pixel[0] - column, pixel[1] - row) > STILL_PIXELS) {
                    return true;
                }
            }
        }
        return false;
    }
}
