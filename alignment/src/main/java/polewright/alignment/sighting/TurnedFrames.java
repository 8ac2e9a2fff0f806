package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.camera.AttitudeBounds;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.mount.AxisEstimate;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Camera frames between which only right ascension was turned, optionally with one more after the screws were turned:
 * then the axis is that of the last frame.
 *
 * @param frames two at least, in order of exposure
 * @param afterScrews taken after screws were turned, camera and declination untouched
 * @param drive state of the right-ascension drive, if known; the axis does not depend on it
 */
public record TurnedFrames(List<CameraAttitude> frames, Optional<CameraAttitude> afterScrews, Drive drive)
        implements Sighting {
    /**
     * Flexure of fork, tube and camera bracket as they turn (common practice: some arcseconds to tens). Frames at one
     * declination agree better with each other than with those at another.
     */
    public static final Angle MOUNT_FLEXURE = Angle.ofArcseconds(5);

    /** The name of this kind in fixes and logs. */
    public static final String KIND = "camera frames";

    public TurnedFrames {
        frames = AxisFromFrames.inOrderOfExposure(frames);
        if (afterScrews.isPresent()) {
            CameraAttitude last = AttitudeBounds.require(afterScrews.get());
            if (!last.at().isAfter(frames.get(frames.size() - 1).at())) {
                throw new InputRefused(
                        "the frame after the screws were turned is no later than those before",
                        "give each frame its own time of exposure");
            }
        }
    }

    /** Frames without another after the screws were turned. */
    public static TurnedFrames of(List<CameraAttitude> frames, Drive drive) {
        return new TurnedFrames(frames, Optional.empty(), drive);
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return this;
    }

    @Override
    public Instant ended() {
        return afterScrews.orElse(frames.get(frames.size() - 1)).at();
    }

    @Override
    public Sighting atCorrectedSite(SiteCorrection correction) {
        return correction.isNone()
                ? this
                : new TurnedFrames(
                        frames.stream().map(correction::attitude).toList(),
                        afterScrews.map(correction::attitude),
                        drive);
    }

    @Override
    public Sighting throughCorrectedOptic(OpticCorrection correction) {
        return this;
    }

    /** The time at which the axis is determined: the first frame, or the one after the screws were turned. */
    @Override
    public Instant at() {
        return afterScrews.orElse(frames.get(0)).at();
    }

    @Override
    public String kind() {
        return KIND;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.frames(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.FRAMES;
    }

    /** Each frame has its own time. */
    @Override
    public void write(FieldWriter out) {
        out.list("frames", frames, AttitudeFields::write);
        afterScrews.ifPresent(frame -> out.object("after_screws", frame, AttitudeFields::write));
        if (drive != Drive.NOT_TOLD) {
            out.word("drive", drive);
        }
    }

    static TurnedFrames read(FieldReader in) {
        List<CameraAttitude> frames = in.list("frames", AttitudeFields::read);
        Optional<CameraAttitude> after = in.has("after_screws")
                ? Optional.of(in.object("after_screws", AttitudeFields::read))
                : Optional.empty();
        Drive drive = in.has("drive") ? in.choice("drive", Drive.class) : Drive.NOT_TOLD;
        return in.made(() -> new TurnedFrames(frames, after, drive));
    }

    /** The attitudes already include refraction, so the weather is not needed. */
    @Override
    public AxisModel model(Site site, Weather weather) {
        AxisFromFrames found = AxisFromFrames.of(site, frames);
        AxisEstimate axis = afterScrews.map(found::followedTo).orElseGet(found::estimate);
        AxisEstimate inTheNight = axis.widenedBy(MOUNT_FLEXURE);
        return AxisModel.of(inTheNight);
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return Stream.concat(frames.stream(), afterScrews.stream())
                .map(LineOfSight::of)
                .toList();
    }

    @Override
    public boolean isReadByEye() {
        return false;
    }

    @Override
    public boolean isEnteredByHand() {
        return false;
    }

    @Override
    public Optional<InstrumentReading> instrumentReading() {
        return Optional.empty();
    }

    /**
     * None: nothing is read or entered by hand. A clock wrong by hours turns the axis about the pole by 15 degrees an
     * hour, which moves a small offset by less than other sightings could detect.
     */
    @Override
    public List<Misreading> misreadings() {
        return List.of();
    }
}
