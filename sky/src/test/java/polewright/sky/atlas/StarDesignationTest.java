package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StarDesignationTest {
    @ParameterizedTest
    @CsvSource({
        "alpha lyrae, alp Lyr, Alpha Lyrae",
        "alLyr, alp Lyr, Alpha Lyrae",
        "ga-1And, gam1 And, Gamma1 Andromedae",
        "π³ Ori, pi3 Ori, Pi3 Orionis",
        "pi03 Ori, pi3 Ori, Pi3 Orionis",
        "61 cygni, 61 Cyg, 61 Cygni",
        "beta leonis minoris, bet LMi, Beta Leonis Minoris",
        "Xi Ursae Majoris, xi UMa, Xi Ursae Majoris",
        "q Car, q Car, q Carinae",
        "V645 Cen, V645 Cen, V645 Centauri",
        "v0645 cen, V645 Cen, V645 Centauri",
        "omicron canum venaticorum, omi CVn, Omicron Canum Venaticorum",
    })
    void typedForms_parseToOneDesignation(String typed, String abbreviated, String spelled) {
        StarDesignation read = StarDesignation.parse(typed).orElseThrow();
        assertThat(read.abbreviated()).isEqualTo(abbreviated);
        assertThat(read.spelled()).isEqualTo(spelled);
        assertThat(StarDesignation.ofAbbreviated(abbreviated)).contains(read);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "Lyr", "Vega", "alpha", "M 31", "NGC 224", "HIP 91262"})
    void otherWordsAreNotDesignations(String typed) {
        assertThat(StarDesignation.parse(typed)).isEmpty();
        assertThat(StarDesignation.ofAbbreviated(typed)).isEmpty();
    }

    @Test
    void ambiguousAbbreviations_areNotGuessed() {
        // "om" could begin omicron or omega: as two letters it is a variable star.
        assertThat(StarDesignation.parse("om Lyr").map(StarDesignation::abbreviated))
                .contains("OM Lyr");
        assertThat(StarDesignation.parse("0 Cyg")).isEmpty();
    }

    @Test
    void latinLettersKeepTheirCase() {
        assertThat(StarDesignation.parse("b Cyg")).isNotEqualTo(StarDesignation.parse("B Cyg"));
    }
}
