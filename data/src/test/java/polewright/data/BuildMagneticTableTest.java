package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.Test;

class BuildMagneticTableTest {
    private static ObjectNode model(int epoch) {
        ObjectNode model = new ObjectMapper().createObjectNode();
        model.put("name", "WMM-" + epoch).put("epoch", epoch).put("n_max", 12);
        for (String list :
                new String[] {"main_field_coeff_g", "main_field_coeff_h", "secular_var_coeff_g", "secular_var_coeff_h"
                }) {
            for (int i = 0; i <= 90; i++) {
                model.withArray(list).add(i == 0 ? 0 : i + 0.5);
            }
        }
        return model;
    }

    @Test
    void writesAHeaderAndOneLineForEachCoefficient() {
        String[] lines = BuildMagneticTable.table(model(2025)).split("\n", -1);
        assertThat(lines).hasSize(1 + 90 + 1);
        assertThat(lines[0].strip().split("\\s+"))
                .containsExactly(
                        "WMM2025", "2025.00", "12", "12", "0", "2025.00", "2030.00", "-1.0", "600.0", "WMM2025", "0");
        assertThat(lines[1].strip().split("\\s+"))
                .containsExactly("1", "0", "1.5", "1.5", "1.5", "1.5", "WMM2025", "1");
        assertThat(lines[90].strip().split("\\s+"))
                .containsExactly("12", "12", "90.5", "90.5", "90.5", "90.5", "WMM2025", "90");
    }

    @Test
    void refusesAnOlderModel() {
        assertThatThrownBy(() -> BuildMagneticTable.table(model(2020)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("not WMM2025: \"WMM-2020\"");
    }
}
