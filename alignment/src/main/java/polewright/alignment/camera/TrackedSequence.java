package polewright.alignment.camera;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The drift of the stars of one field across a sequence of frames while the mount tracked it.
 *
 * <p>The star at the centre of the first frame is followed through diurnal rotation and refraction, and its position in
 * each later frame is measured along that frame's rows and columns, toward the sky's north and east at the first. That
 * is the drift seen in the pictures, exactly, however refraction bends the star's path.
 *
 * <p>Drift to the north depends on the axis alone. Drift to the east combines the axis's part, the drive's rate and the
 * periodic error, which is given separately.
 *
 * @param start time of the first frame
 * @param length to the last
 * @param rightAscension of the field's centre in the first frame, ICRS
 * @param declination of the same, ICRS
 * @param north drift toward the north celestial pole
 * @param east drift eastward, on the sky
 * @param worm eastward residuals from that line
 */
public record TrackedSequence(
        Instant start,
        Duration length,
        Angle rightAscension,
        Angle declination,
        Drift north,
        Drift east,
        PeriodicError worm) {
    private static final int FEWEST_FRAMES = 3;
    private static final int ENOUGH_FOR_A_BEND = 6;
    private static final Duration SHORTEST = Duration.ofMinutes(1);
    private static final Duration LONGEST = Duration.ofHours(6);
    // The lunar rate differs by 4 % from the sidereal; a mount that does not track, or runs at twice the rate, is far
    // off.
    private static final double FOLLOWS_WITHIN = 0.2;
    private static final double ARCSEC = Math.PI / (180 * 3600);

    /**
     * A rate of drift.
     *
     * @param perMinute per minute
     * @param sigmaPerMinute its 1 sigma, from the frames' own uncertainty or from their scatter, whichever is larger
     */
    public record Drift(Angle perMinute, Angle sigmaPerMinute) {}

    /**
     * Fits the drift.
     *
     * @param site observing site
     * @param weather for refraction, as for the attitudes
     * @param attitudes three at least, of one field, in any order
     * @throws InputRefused if they are too few or too short, or the mount did not track
     */
    public static TrackedSequence of(Site site, Weather weather, List<CameraAttitude> attitudes) {
        List<CameraAttitude> frames = inOrderOfExposure(attitudes);
        CameraAttitude first = frames.get(0);
        CameraAttitude last = frames.get(frames.size() - 1);
        Duration length = Duration.between(first.at(), last.at());
        requireTracking(site, first, last, length);

        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(first.at()), weather);
        RefractedDirection centre = new RefractedDirection(first.boresight());
        HourAnglePlace place = moment.hourAngle(moment.airless(centre));
        Vector3D northPole =
                new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Vector3D towardNorth = northPole
                .subtract(centre.enu().scalarMultiply(northPole.dotProduct(centre.enu())))
                .normalize();
        Vector3D north = AxisFit.inCamera(first, towardNorth);
        Vector3D east = north.crossProduct(Vector3D.PLUS_K);

        List<DriftLine.Point> northward = new ArrayList<>();
        List<DriftLine.Point> eastward = new ArrayList<>();
        for (CameraAttitude frame : frames) {
            Duration since = Duration.between(first.at(), frame.at());
            HourAnglePlace then =
                    new HourAnglePlace(place.hourAngle().plus(SiderealTurn.during(since)), place.declination());
            Vector3D star = AxisFit.inCamera(
                    frame, moment.refracted(moment.airless(then)).enu());
            double minutes = since.toMillis() / 60000.0;
            // A rotation about one direction in the picture moves stars along the other.
            northward.add(new DriftLine.Point(
                    minutes,
                    star.dotProduct(north) / star.getZ() / ARCSEC,
                    Math.sqrt(frame.covariance().varianceAboutArcsec2(east))));
            eastward.add(new DriftLine.Point(
                    minutes,
                    star.dotProduct(east) / star.getZ() / ARCSEC,
                    Math.sqrt(frame.covariance().varianceAboutArcsec2(north))));
        }
        CatalogueStar icrs = moment.catalogueDirection(moment.apparent(place));
        // Only the sky curves the northward motion: what a parabola leaves is noise.
        DriftLine northDrift =
                frames.size() < ENOUGH_FOR_A_BEND ? DriftLine.of(northward) : DriftLine.withBend(northward);
        DriftLine eastDrift = PeriodicErrorSearch.drift(eastward);
        return new TrackedSequence(
                first.at(),
                length,
                icrs.rightAscension(),
                icrs.declination(),
                northDrift.drift(),
                eastDrift.drift(),
                PeriodicError.of(eastDrift, place.declination()));
    }

    private static List<CameraAttitude> inOrderOfExposure(List<CameraAttitude> attitudes) {
        if (attitudes.size() < FEWEST_FRAMES) {
            throw new InputRefused(
                    attitudes.size() + " frames are too few for a drift",
                    "keep tracking and take three or more over some minutes");
        }
        attitudes.forEach(AttitudeBounds::require);
        List<CameraAttitude> frames = new ArrayList<>(attitudes);
        frames.sort(Comparator.comparing(CameraAttitude::at));
        Duration length = Duration.between(
                frames.get(0).at(), frames.get(frames.size() - 1).at());
        if (length.compareTo(SHORTEST) < 0 || length.compareTo(LONGEST) > 0) {
            throw new InputRefused(
                    "a sequence of " + PlainNumber.of(Math.rint(length.toSeconds() / 6.0) / 10)
                            + " minutes is outside 1 to 360",
                    "track one field for five to fifteen minutes");
        }
        return frames;
    }

    private static void requireTracking(Site site, CameraAttitude first, CameraAttitude last, Duration length) {
        Vector3D northPole =
                new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Angle turned = SiderealTurn.westward(
                last.cameraToEnu().applyTo(first.cameraToEnu().revert()), northPole);
        Angle sky = SiderealTurn.during(length);
        double sigma = Math.sqrt(first.covariance().varianceAboutArcsec2(AxisFit.inCamera(first, northPole))
                + last.covariance().varianceAboutArcsec2(AxisFit.inCamera(last, northPole)));
        double off = Math.abs(turned.minus(sky).wrappedSigned().arcseconds());
        if (off > FOLLOWS_WITHIN * sky.arcseconds() + 3 * sigma) {
            throw new InputRefused(
                    String.format(
                            java.util.Locale.ROOT,
                            "the mount turned %.2f degrees while the sky turned %.2f: it did not track the field",
                            turned.degrees(),
                            sky.degrees()),
                    "switch the drive on, check the times of the frames, and leave the slow motions alone");
        }
    }
}
