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
import polewright.web.form.SightingForms;
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
    public List<Section> sections(PageRequest asked) {
        Map<String, String> values = new HashMap<>();
        for (Field field : form.fields()) {
            asked.word(field.name()).ifPresent(word -> values.put(field.name(), word));
        }
        opticFor(asked).ifPresent(optic -> {
            values.putIfAbsent("with", optic.name());
            if (form.equals(SightingForms.DRIFT) && optic.division().isEmpty()) {
                values.putIfAbsent("unit", "radii");
            }
        });
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Entry(Forms.fresh(asked, form, values)));
        return sections;
    }

    private Optional<Optic> opticFor(PageRequest asked) {
        if (form.fields().stream().noneMatch(field -> field.name().equals("with"))) {
            return Optional.empty();
        }
        Optional<Rig> rig = asked.desk()
                .tonight()
                .map(tonight -> tonight.state().situation().rig());
        SightingKind kind = form.id().equals("still") ? SightingKind.STILL_POINT : SightingKind.DRIFT_ON_MERIDIAN;
        return rig.flatMap(kind::optic);
    }
}
