package polewright.web.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;
import polewright.web.view.FieldView;

class FieldTest {
    private static CommandForm sighting(String id) {
        return SightingForms.typed().stream()
                .filter(form -> form.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static FieldView field(CommandForm form, String name) {
        return form.fields().stream()
                .filter(field -> field.name().equals(name))
                .findFirst()
                .map(field -> new FieldView(form.id(), field, ""))
                .orElseThrow();
    }

    @Test
    void figure_getsDecimalKeyboard_unlessItMayBeNegative() {
        assertThat(field(sighting("compass"), "bearing").keys()).isEqualTo("decimal");
        assertThat(field(sighting("drift"), "minutes").keys()).isEqualTo("decimal");
        assertThat(field(NightForms.UNDO, "seq").keys()).isEqualTo("numeric");
        // Some phones' decimal keyboards have no minus sign.
        assertThat(field(sighting("shadow"), "angle").keys()).isEqualTo("text");
        assertThat(field(SetupForms.BEGIN, "temperature").keys()).isEqualTo("text");
        assertThat(field(sighting("drift"), "star").keys()).isEmpty();
    }

    @Test
    void hint_saysWhatHoldsIfTheFieldStaysEmpty() {
        assertThat(field(sighting("compass"), "declination").hint())
                .isEqualTo("East is positive. Empty: computed for site and date.");
        assertThat(field(sighting("drift"), "minutes").hint()).isEmpty();
    }

    @Test
    void choice_offersFirstWhatHoldsOtherwise() {
        assertThat(field(sighting("shadow"), "body").options())
                .extracting(ArgumentType.Option::label)
                .containsExactly("the Sun", "the Moon");
    }

    /** A browser sends the first option of a list that was not touched. */
    @Test
    void choice_setsNothingThatWasNotChosen() {
        for (CommandForm form : CommandForms.all()) {
            for (Argument<?> argument : form.fields()) {
                FieldView field = new FieldView(form.id(), argument, "");
                if (!field.options().isEmpty()) {
                    assertThat(field.options().get(0).value())
                            .as(form.id() + " " + argument.name())
                            .isEmpty();
                }
            }
        }
    }

    @Test
    void choiceThatIsNeeded_asksForOne() {
        assertThat(field(WorkForms.ALLOW_FOR, "for").options().get(0).label()).isEqualTo("choose");
        assertThat(field(SetupForms.BEGIN, "for").options().get(0).label()).isEqualTo("as last time");
    }

    /** Where the decimal comma is usual, a phone's decimal keyboard has no point. */
    @Test
    void comma_inAFigureIsAPoint_notInWords() {
        CommandForm scale = sighting("scale");
        assertThat(scale.entries(Map.of("altitude", "54,6")).of(scale.fields().get(0)))
                .isEqualTo(54.6);
        assertThat(scale.line(Map.of("altitude", "54,6"))).endsWith(" 54.6");
        assertThat(SetupForms.BEGIN.line(Map.of("site", "54.60,-2.90"))).endsWith(" --site=54.60,-2.90");
    }
}
