package polewright.session.jsonl;

import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Experience;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RightAscensionDrive;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewOrder;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.TravelLimits;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** The rig: mount, screws, optics and cameras. */
final class RigJson {
    // The assumed fork's screws, before assumed directions were marked.
    private static final Screw ONCE_ASSUMED_AZIMUTH =
            new Screw(new ScrewGeometry.PushScrew(1.25, 200), ScrewSense.RIGHT, 0.15, 0.05, 0.1);
    private static final Screw ONCE_ASSUMED_ALTITUDE =
            new Screw(new ScrewGeometry.PushScrew(1.25, 180), ScrewSense.RAISES, 0.15, 0.05, 0.1);

    private RigJson() {}

    static void write(FieldWriter out, Rig rig) {
        out.text("name", rig.name())
                .word("kind", rig.kind())
                .object("azimuth_screw", rig.azimuthScrew(), ScrewJson::write)
                .object("altitude_screw", rig.altitudeScrew(), ScrewJson::write)
                .angle("level_sigma_deg", rig.levelSigma())
                .angle("clamp_sigma_arcmin", rig.clampSigma())
                .list("optics", rig.optics(), RigJson::writeOptic)
                .list("cameras", rig.cameras(), RigJson::writeCamera)
                .word("screw_order", rig.screwOrder())
                .object("drive", rig.drive(), DriveJson::write)
                .object("travel", rig.travel(), TravelJson::write);
        rig.experience().ifPresent(learned -> out.object("learned", learned, ExperienceJson::write));
    }

    static Rig read(FieldReader in) {
        String name = in.text("name");
        MountKind kind = in.choice("kind", MountKind.class);
        ScrewJson.Written azimuth = in.object("azimuth_screw", ScrewJson::read);
        ScrewJson.Written altitude = in.object("altitude_screw", ScrewJson::read);
        Angle level = in.angle("level_sigma_deg");
        Angle clamp = in.angle("clamp_sigma_arcmin");
        List<Optic> optics = in.has("optics") ? in.list("optics", RigJson::readOptic) : List.of();
        List<Camera> cameras = in.has("cameras") ? in.list("cameras", RigJson::readCamera) : List.of();
        ScrewOrder order =
                in.has("screw_order") ? in.choice("screw_order", ScrewOrder.class) : ScrewOrder.ALTITUDE_FIRST;
        RightAscensionDrive drive = in.has("drive") ? in.object("drive", DriveJson::read) : RightAscensionDrive.USUAL;
        TravelLimits travel = in.has("travel") ? in.object("travel", TravelJson::read) : TravelLimits.USUAL;
        Optional<Experience> learned =
                in.has("learned") ? Optional.of(in.object("learned", ExperienceJson::read)) : Optional.empty();
        Rig rig = in.made(() -> new Rig(
                name,
                kind,
                azimuth.screw(),
                altitude.screw(),
                level,
                clamp,
                optics,
                cameras,
                order,
                drive,
                travel,
                learned));
        return azimuth.isMarked() || altitude.isMarked() ? rig : markedByItsFigures(rig);
    }

    /** In older logs a rig's directions were assumed if its screws were those of the assumed fork. */
    private static Rig markedByItsFigures(Rig rig) {
        return rig.experience().isEmpty()
                        && rig.azimuthScrew().equals(ONCE_ASSUMED_AZIMUTH)
                        && rig.altitudeScrew().equals(ONCE_ASSUMED_ALTITUDE)
                ? rig.withScrews(
                        rig.azimuthScrew().withSenseAssumed(),
                        rig.altitudeScrew().withSenseAssumed(),
                        rig.levelSigma())
                : rig;
    }

    static void writeOptic(FieldWriter out, Optic optic) {
        out.text("name", optic.name()).angle("field_deg", optic.field()).object("view", optic.view(), View::write);
        optic.division().ifPresent(division -> out.angle("division_arcsec", division));
    }

    static Optic readOptic(FieldReader in) {
        String name = in.text("name");
        Angle field = in.angle("field_deg");
        View view = in.object("view", View::read);
        Optional<Angle> division =
                in.has("division_arcsec") ? Optional.of(in.angle("division_arcsec")) : Optional.empty();
        return in.made(() -> new Optic(name, field, view, division));
    }

    static void writeCamera(FieldWriter out, Camera camera) {
        out.text("name", camera.name())
                .number("focal_length_mm", camera.focalLengthMm())
                .number("pixel_um", camera.pixelMicrons())
                .whole("width_px", camera.widthPixels())
                .whole("height_px", camera.heightPixels());
    }

    static Camera readCamera(FieldReader in) {
        String name = in.text("name");
        double focalLength = in.number("focal_length_mm");
        double pixel = in.number("pixel_um");
        int width = pixels(in, "width_px");
        int height = pixels(in, "height_px");
        return in.made(() -> new Camera(name, focalLength, pixel, width, height));
    }

    private static int pixels(FieldReader in, String key) {
        long pixels = in.whole(key);
        // A camera's own limits refuse numbers beyond the range of int.
        return (int) Math.max(-1, Math.min(Integer.MAX_VALUE, pixels));
    }
}
