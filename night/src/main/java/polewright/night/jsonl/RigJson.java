package polewright.night.jsonl;

import java.util.List;
import java.util.Optional;
import polewright.axis.rig.MountKind;
import polewright.axis.rig.Optic;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.axis.rig.View;
import polewright.sky.angle.Angle;

/** The rig: mount, screws and optics. */
final class RigJson {
    private RigJson() {}

    static void write(FieldWriter out, Rig rig) {
        out.text("name", rig.name())
                .word("kind", rig.kind())
                .object("azimuth_screw", rig.azimuthScrew(), ScrewJson::write)
                .object("altitude_screw", rig.altitudeScrew(), ScrewJson::write)
                .angle("level_sigma_deg", rig.levelSigma())
                .angle("clamp_sigma_arcmin", rig.clampSigma())
                .list("optics", rig.optics(), RigJson::writeOptic);
    }

    static Rig read(FieldReader in) {
        String name = in.text("name");
        MountKind kind = in.choice("kind", MountKind.class);
        Screw azimuth = in.object("azimuth_screw", ScrewJson::read);
        Screw altitude = in.object("altitude_screw", ScrewJson::read);
        Angle level = in.angle("level_sigma_deg");
        Angle clamp = in.angle("clamp_sigma_arcmin");
        List<Optic> optics = in.has("optics") ? in.list("optics", RigJson::readOptic) : List.of();
        return in.made(() -> new Rig(name, kind, azimuth, altitude, level, clamp, optics));
    }

    private static void writeOptic(FieldWriter out, Optic optic) {
        out.text("name", optic.name()).angle("field_deg", optic.field()).object("view", optic.view(), ViewJson::write);
        optic.division().ifPresent(division -> out.angle("division_arcsec", division));
    }

    private static Optic readOptic(FieldReader in) {
        String name = in.text("name");
        Angle field = in.angle("field_deg");
        View view = in.object("view", ViewJson::read);
        Optional<Angle> division =
                in.has("division_arcsec") ? Optional.of(in.angle("division_arcsec")) : Optional.empty();
        return in.made(() -> new Optic(name, field, view, division));
    }
}
