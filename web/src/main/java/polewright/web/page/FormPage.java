package polewright.web.page;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.web.form.CommandForm;
import polewright.web.form.Field;
import polewright.web.form.NightForms;
import polewright.web.form.SightingForms;
import polewright.web.session.PracticeAddress;
import polewright.web.view.Section;

/**
 * A page for one form.
 *
 * @param path its address
 */
record FormPage(String path, CommandForm form) implements Page {
    @Override
    public String name() {
        return form.title();
    }

    @Override
    public String menuPath() {
        return switch (form.command().get(0)) {
            case "begin" -> "/";
            case "allow" -> "/work";
            case "target" -> "/tonight";
            case "horizon", "rig", "site" -> "/rig";
            case "undo", "retime" -> NightPage.PATH;
            case "practice" -> PracticeAddress.GAME;
            case "devices" -> Pages.DEVICES;
            default -> form.id().equals(NightForms.UNLOGGED_TURN.id()) ? NightPage.PATH : "/sightings";
        };
    }

    @Override
    public List<Section> sections(PageRequest request) {
        Map<String, String> values = new HashMap<>();
        for (Field field : form.fields()) {
            request.word(field.name()).ifPresent(word -> values.put(field.name(), word));
        }
        opticFor(request).ifPresent(optic -> {
            values.putIfAbsent("with", optic.name());
            if (form.equals(SightingForms.DRIFT) && optic.division().isEmpty()) {
                values.putIfAbsent("unit", "radii");
            }
        });
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Entry(Forms.fresh(request, form, values)));
        return sections;
    }

    private Optional<Optic> opticFor(PageRequest request) {
        if (form.fields().stream().noneMatch(field -> field.name().equals("with"))) {
            return Optional.empty();
        }
        Optional<Rig> rig = request.session()
                .tonight()
                .map(tonight -> tonight.state().situation().rig());
        SightingKind kind = form.id().equals("still") ? SightingKind.STILL_POINT : SightingKind.DRIFT_ON_MERIDIAN;
        return rig.flatMap(kind::optic);
    }
}
