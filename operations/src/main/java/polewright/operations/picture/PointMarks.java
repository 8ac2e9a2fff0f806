package polewright.operations.picture;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.Plate;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisPointing;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Where the pole and the axis are among the stars of a frame. */
public final class PointMarks {
    // 95 % of a plane Gaussian lie within √(−2 ln 0.05) sigma.
    private static final double SIGMAS_OF_95_PERCENT = Math.sqrt(-2 * Math.log(0.05));
    private static final int CORNERS = 72;
    private static final double ARCSEC = Math.PI / (180 * 3600);

    private PointMarks() {}

    /** The nearer pole of that date, among the stars: the site is not known, so refraction is ignored. */
    public static PointMark pole(PlacedFrame placed, Instant at) {
        boolean north = placed.match().plate().declination().radians() >= 0;
        ObservingMoment moment = ObservingMoment.of(Site.ofDegrees(0, 0, 0), SkyTime.of(at), Weather.AIRLESS);
        CatalogueStar icrs = moment.catalogueDirection(ApparentPlace.of(Angle.ZERO, Angle.ofDegrees(north ? 90 : -90)));
        Vector3D direction =
                new Vector3D(icrs.rightAscension().radians(), icrs.declination().radians());
        return new PointMark(direction, List.of(), words(north));
    }

    /**
     * The elevated pole, to which the axis must point: the stars around it are raised by refraction, the pole is not.
     */
    public static PointMark truePole(PlacedFrame placed, CameraAttitude attitude, Site site) {
        return new PointMark(
                among(placed, attitude, AxisPointing.atPole(site).elevatedEnd()), List.of(), words(site.isNorthern()));
    }

    /** The axis and its 95 % confidence region. */
    public static PointMark axis(PlacedFrame placed, CameraAttitude attitude, AxisEstimate axis) {
        Vector3D end = axis.axis().elevatedEnd();
        double level = Math.hypot(end.getX(), end.getY());
        Vector3D right = new Vector3D(end.getY() / level, -end.getX() / level, 0);
        Vector3D up = right.crossProduct(end);
        double rightSigma = Math.sqrt(axis.rightRightArcsec2());
        double cross = axis.rightUpArcsec2() / rightSigma;
        double upSigma = Math.sqrt(Math.max(0, axis.upUpArcsec2() - cross * cross));
        List<Vector3D> outline = new ArrayList<>();
        for (int i = 0; i < CORNERS; i++) {
            double t = 2 * Math.PI * i / CORNERS;
            double first = SIGMAS_OF_95_PERCENT * ARCSEC * Math.cos(t);
            double second = SIGMAS_OF_95_PERCENT * ARCSEC * Math.sin(t);
            Vector3D corner =
                    new Vector3D(1, end, rightSigma * first, right, cross * first + upSigma * second, up).normalize();
            outline.add(among(placed, attitude, corner));
        }
        return new PointMark(among(placed, attitude, end), outline, "axis");
    }

    /**
     * Converts a direction relative to the horizon into its place among the stars of the frame of a camera with this
     * attitude.
     */
    private static Vector3D among(PlacedFrame placed, CameraAttitude attitude, Vector3D enu) {
        Vector3D inCamera = attitude.cameraToEnu().applyInverseTo(enu);
        Plate plate = placed.match().plate();
        return new Vector3D(
                inCamera.getX(), plate.right(), inCamera.getY(), plate.down(), inCamera.getZ(), plate.centre());
    }

    private static String words(boolean north) {
        return north ? "north celestial pole" : "south celestial pole";
    }
}
