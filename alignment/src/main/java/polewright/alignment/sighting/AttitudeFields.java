package polewright.alignment.sighting;

import polewright.alignment.camera.AttitudeBounds;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** One camera frame, with its time, attitude and covariance. */
final class AttitudeFields {
    private AttitudeFields() {}

    static void write(FieldWriter out, CameraAttitude frame) {
        out.text("at", frame.at().toString())
                .number("qx", frame.qx())
                .number("qy", frame.qy())
                .number("qz", frame.qz())
                .number("qw", frame.qw())
                .object("covariance_arcsec2", frame.covariance(), AttitudeFields::writeCovariance);
    }

    static CameraAttitude read(FieldReader in) {
        CameraAttitude frame = new CameraAttitude(
                in.instant("at"),
                in.number("qx"),
                in.number("qy"),
                in.number("qz"),
                in.number("qw"),
                in.object("covariance_arcsec2", AttitudeFields::readCovariance));
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
