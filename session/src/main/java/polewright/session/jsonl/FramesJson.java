package polewright.session.jsonl;

import java.util.List;
import java.util.Optional;
import polewright.alignment.camera.AttitudeBounds;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.TurnedFrames;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;

/** Camera frames, each with its time, attitude and covariance. */
final class FramesJson {
    private FramesJson() {}

    static void write(FieldWriter out, TurnedFrames sighting) {
        out.list("frames", sighting.frames(), FramesJson::writeFrame);
        sighting.afterScrews().ifPresent(frame -> out.object("after_screws", frame, FramesJson::writeFrame));
        if (sighting.drive() != Drive.NOT_TOLD) {
            out.word("drive", sighting.drive());
        }
    }

    static TurnedFrames read(FieldReader in) {
        List<CameraAttitude> frames = in.list("frames", FramesJson::readFrame);
        Optional<CameraAttitude> after = in.has("after_screws")
                ? Optional.of(in.object("after_screws", FramesJson::readFrame))
                : Optional.empty();
        Drive drive = in.has("drive") ? in.choice("drive", Drive.class) : Drive.NOT_TOLD;
        return in.made(() -> new TurnedFrames(frames, after, drive));
    }

    private static void writeFrame(FieldWriter out, CameraAttitude frame) {
        out.text("at", frame.at().toString())
                .number("qx", frame.qx())
                .number("qy", frame.qy())
                .number("qz", frame.qz())
                .number("qw", frame.qw())
                .object("covariance_arcsec2", frame.covariance(), FramesJson::writeCovariance);
    }

    private static CameraAttitude readFrame(FieldReader in) {
        CameraAttitude frame = new CameraAttitude(
                in.instant("at"),
                in.number("qx"),
                in.number("qy"),
                in.number("qz"),
                in.number("qw"),
                in.object("covariance_arcsec2", FramesJson::readCovariance));
        return in.made(() -> AttitudeBounds.require(frame));
    }

    private static void writeCovariance(FieldWriter out, RotationCovariance c) {
        out.number("xx", c.xxArcsec2())
                .number("xy", c.xyArcsec2())
                .number("xz", c.xzArcsec2())
                .number("yy", c.yyArcsec2())
                .number("yz", c.yzArcsec2())
                .number("zz", c.zzArcsec2());
    }

    private static RotationCovariance readCovariance(FieldReader in) {
        return new RotationCovariance(
                in.number("xx"),
                in.number("xy", 0),
                in.number("xz", 0),
                in.number("yy"),
                in.number("yz", 0),
                in.number("zz"));
    }
}
