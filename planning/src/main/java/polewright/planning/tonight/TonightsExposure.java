package polewright.planning.tonight;

import java.util.Optional;
import polewright.alignment.allowance.ExposureLimits;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.Interval;

/** The longest exposures of a target with the current axis. */
public final class TonightsExposure {
    private TonightsExposure() {}

    /** Over the window that contains its best time; empty without a camera, or without a fix. */
    public static Optional<ExposureLimits.Limit> of(Evening evening, Observability showing) {
        Optional<Camera> camera = WorkPreset.mainCamera(evening.rig());
        if (camera.isEmpty() || evening.axis().isEmpty()) {
            return Optional.empty();
        }
        Interval window = showing.bestWindow();
        HourAnglePlace from = showing.path().at(window.from());
        Angle to = showing.path().at(window.to()).hourAngle();
        // Hour angles wrap at the lower meridian.
        Angle end = to.compareTo(from.hourAngle()) < 0 ? to.plus(Angle.HALF_TURN.times(2)) : to;
        ImagingRun usual = WorkPreset.SHORT_SUBS.with(camera.get());
        ImagingRun shot = new ImagingRun(
                usual.name(),
                usual.camera(),
                new SkyRegion.Track(showing.target().label(), from.declination(), from.hourAngle(), end),
                usual.subExposure(),
                usual.total(),
                usual.guiding(),
                usual.tolerance());
        KnownAxis axis = evening.axis().get();
        return Optional.of(ExposureLimits.longest(
                evening.site(), evening.weather(), evening.rig(), shot, axis.offset(), axis.covariance()));
    }
}
