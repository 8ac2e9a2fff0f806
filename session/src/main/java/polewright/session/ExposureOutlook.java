package polewright.session;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Adviser;
import polewright.alignment.advice.Prospect;
import polewright.alignment.allowance.ExposureLimits;
import polewright.alignment.allowance.ExposureLimits.Limit;
import polewright.alignment.fix.AxisState;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.Work;

/**
 * How long the exposures of one imaging run may be with the axis as it is, and what one more adjustment would gain.
 *
 * @param now the limit from the current fix and its uncertainty
 * @param next the same after one more adjustment; empty if nothing is left to adjust, or too little is known
 */
public record ExposureOutlook(ImagingRun shot, Limit now, Optional<After> next) {
    // The gain in exposure time that makes an adjustment worthwhile.
    private static final double WORTH_WHILE = 1.3;

    /**
     * After one more adjustment.
     *
     * @param minutes of work for it
     */
    public record After(Limit limit, double minutes) {}

    /** For each imaging run of tonight's work; none without a fix. */
    public static List<ExposureOutlook> of(NightState night) {
        if (!night.fix().isDetermined()) {
            return List.of();
        }
        AxisState state = night.fix().state();
        Optional<Prospect> prospect = Adviser.prospect(night.situation());
        return night.work().map(Work::items).orElse(List.of()).stream()
                .filter(ImagingRun.class::isInstance)
                .map(ImagingRun.class::cast)
                .map(shot -> new ExposureOutlook(
                        shot,
                        ExposureLimits.longest(
                                night.begun().site(),
                                night.begun().weather(),
                                night.fix().rig(),
                                shot,
                                state.offset(),
                                state.offsetCovariance()),
                        prospect.map(p -> after(night, shot, p))))
                .toList();
    }

    private static After after(NightState night, ImagingRun shot, Prospect prospect) {
        Limit limit = ExposureLimits.longest(
                night.begun().site(),
                night.begun().weather(),
                night.fix().rig(),
                shot,
                prospect.offset(),
                prospect.covariance());
        return new After(limit, prospect.minutes());
    }

    /** Whether the exposures wanted are possible now. */
    public boolean isLongEnough() {
        return asWanted(now).compareTo(shot.subExposure()) >= 0;
    }

    /** Whether one more adjustment would allow exposures long enough to be worth the work. */
    public boolean isWorthAdjusting() {
        return !isLongEnough()
                && next.filter(after -> asWanted(after.limit()).toMillis()
                                > WORTH_WHILE * asWanted(now).toMillis())
                        .isPresent();
    }

    /** Guided or not, as planned for the run. */
    public Duration asWanted(Limit limit) {
        return shot.guiding() instanceof Guiding.Guided ? limit.guided() : limit.unguided();
    }
}
