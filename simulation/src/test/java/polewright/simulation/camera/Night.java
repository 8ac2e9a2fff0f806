package polewright.simulation.camera;

import java.time.Duration;
import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.Frame;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** A site and an hour for test frames, and the measurements on them. */
record Night(Site site, Instant at, Weather weather) {
    static final Night LARKFELL = new Night(
            Site.ofDegrees(54.60, -2.90, 240), Instant.parse("2026-10-14T21:00:00Z"), Weather.standardAt(240));
    static final Night TUSSOCK_FLAT = new Night(
            Site.ofDegrees(-43.95, 170.40, 710), Instant.parse("2026-06-10T10:00:00Z"), Weather.standardAt(710));
    static final FrameRenderer RENDERER = new FrameRenderer(StarAtlas.bundled());

    /** 1.5″ a pixel, 11′ by 9′: small, so that tests are quick. */
    static SimulatedCamera smallCamera() {
        return SimulatedCamera.of("test", CameraOptics.clean(500, 60, 6), Detector.flawless(440, 360, 3.6));
    }

    /** 60″ a pixel, 10° by 8°. */
    static SimulatedCamera wideCamera() {
        return SimulatedCamera.of("wide", CameraOptics.clean(20, 5, 12), Detector.flawless(600, 480, 5.8));
    }

    Night airless() {
        return new Night(site, at, Weather.AIRLESS);
    }

    ObservingMoment moment() {
        return ObservingMoment.of(site, SkyTime.of(at), weather);
    }

    Vector3D northPole() {
        return new Vector3D(0, site.latitude().cos(), site.latitude().sin());
    }

    Rotation toward(String star, double upPositionAngleDeg) {
        return toward(NamedStars.bundled().named(star).place(), upPositionAngleDeg);
    }

    Rotation toward(CatalogueStar star, double upPositionAngleDeg) {
        return CameraAim.at(star, Angle.ofDegrees(upPositionAngleDeg), moment());
    }

    Exposure exposure(SimulatedCamera camera, CameraPath path, SkyConditions sky, Duration length) {
        return new Exposure(camera, path, site, weather, sky, at, length);
    }

    /** A uniform, dark sky and a mount that tracks it perfectly. */
    Exposure tracked(SimulatedCamera camera, Rotation toward, double seconds) {
        return exposure(
                camera,
                CameraPath.tracking(toward, northPole()),
                SkyConditions.EVEN,
                Duration.ofNanos(Math.round(seconds * 1e9)));
    }

    /** The background of a noise-free frame under a uniform sky: its darkest pixel. */
    static double sky(Frame frame) {
        float darkest = Float.POSITIVE_INFINITY;
        for (float count : frame.pixels()) {
            darkest = Math.min(darkest, count);
        }
        return darkest;
    }

    /** Sum and first moments of a square of pixels about a place, above a level. */
    static Blob blob(Frame frame, double x, double y, int half, double level) {
        int column0 = (int) Math.rint(x);
        int row0 = (int) Math.rint(y);
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int row = row0 - half; row <= row0 + half; row++) {
            for (int column = column0 - half; column <= column0 + half; column++) {
                double light = frame.pixels()[row * frame.width() + column] - level;
                sum += light;
                sumX += light * column;
                sumY += light * row;
            }
        }
        return new Blob(sum, sumX / sum, sumY / sum);
    }

    record Blob(double sum, double x, double y) {}
}
