package polewright.web.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class FieldTest {
    private static Field field(CommandForm form, String name) {
        return form.fields().stream()
                .filter(field -> field.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void figure_getsDecimalKeyboard_unlessItMayBeNegative() {
        assertThat(field(SightingForms.COMPASS, "bearing").keys()).isEqualTo("decimal");
        assertThat(field(SightingForms.DRIFT, "minutes").keys()).isEqualTo("decimal");
        // Some phones' decimal keyboards have no minus sign.
        assertThat(field(SightingForms.SHADOW, "angle").keys()).isEqualTo("text");
        assertThat(field(NightForms.BEGIN, "temperature").keys()).isEqualTo("text");
        assertThat(field(SightingForms.DRIFT, "star").keys()).isEmpty();
    }

    @Test
    void fieldWithNegativeHint_getsFullKeyboard() {
        Stream.concat(CommandForms.all().stream(), CommandForms.practice().stream())
                .flatMap(form -> form.fields().stream())
                .filter(field -> field.hint().contains("Below zero"))
                .forEach(field -> assertThat(field.keys()).as(field.name()).isEqualTo("text"));
    }

    /** Where the decimal comma is usual, a phone's decimal keyboard has no point. */
    @Test
    void comma_inAFigureIsAPoint_notInWords() {
        assertThat(SightingForms.SCALE.words(Map.of("altitude", "54,6"))).contains("54.6");
        assertThat(SightingForms.SCALE.line(Map.of("altitude", "54,6"))).endsWith(" 54.6");
        assertThat(NightForms.BEGIN.words(Map.of("site", "54.60,-2.90"))).contains("--site=54.60,-2.90");
    }
}
