package polewright.web.page;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.action.Argument;
import polewright.operations.sighting.OpticArguments;
import polewright.operations.sighting.SightingEntries;
import polewright.web.form.CommandForm;
import polewright.web.form.NightForms;
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
        for (Argument<?> field : form.fields()) {
            request.word(field.name()).ifPresent(word -> values.put(field.name(), word));
        }
        opticFor(request).ifPresent(optic -> {
            values.putIfAbsent(OpticArguments.WITH.name(), optic.name());
            if (has("unit") && optic.division().isEmpty()) {
                values.putIfAbsent("unit", "radii");
            }
        });
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Entry(Forms.fresh(request, form, values)));
        return sections;
    }

    /** The optic of the rig that suits the sighting. */
    private Optional<Optic> opticFor(PageRequest request) {
        return has(OpticArguments.WITH.name())
                ? request.session()
                        .tonight()
                        .map(tonight -> tonight.state().situation().rig())
                        .flatMap(this::suitable)
                : Optional.empty();
    }

    private Optional<Optic> suitable(Rig rig) {
        return SightingEntries.of(form.action())
                .flatMap(entry -> entry.answers().stream().findFirst().flatMap(kind -> kind.optic(rig)));
    }

    private boolean has(String name) {
        return form.fields().stream().anyMatch(field -> field.name().equals(name));
    }
}
