package polewright.web.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import polewright.mount.rig.Rig;
import polewright.operations.action.Argument;

class RigChoicesTest {
    private static final Rig FORK = Rig.typicalForkOnWedge();
    private static final CommandForm DRIFT = SightingForms.typed().stream()
            .filter(form -> form.id().equals("drift"))
            .findFirst()
            .orElseThrow();

    private static List<String> shown(Rig rig) {
        return RigChoices.of(DRIFT, rig, Map.of()).fields().stream()
                .filter(field -> !field.isSeldom())
                .map(Argument::name)
                .toList();
    }

    @Test
    void figuresOfTheView_areUnderMore_ifAnOpticGivesThem() {
        assertThat(FORK.optics()).isNotEmpty();
        assertThat(shown(FORK)).contains("with").doesNotContain("field", "view");
    }

    @Test
    void rigWithoutOptics_isAskedForFieldAndView() {
        assertThat(shown(FORK.withOptics(List.of()))).contains("field", "view");
    }

    @Test
    void opticsOfTheRig_areOffered_andLastAnother() {
        assertThat(RigChoices.of(DRIFT, FORK, Map.of()).fields().stream()
                        .filter(field -> field.name().equals("with"))
                        .findFirst()
                        .orElseThrow()
                        .type()
                        .options())
                .hasSize(FORK.optics().size() + 1)
                .last()
                .satisfies(another -> assertThat(another.value()).isEmpty());
    }
}
