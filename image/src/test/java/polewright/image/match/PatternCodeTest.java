package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class PatternCodeTest {
    private static float[] code(double turnRad, double scale, boolean flipped, boolean mirrored) {
        double[][] places = {{9, 4}, {-3, 5}, {2, -6}};
        double[] p = new double[6];
        for (int i = 0; i < 3; i++) {
            double x = flipped ? -places[i][0] : places[i][0];
            double y = places[i][1];
            p[2 * i] = scale * (x * Math.cos(turnRad) - y * Math.sin(turnRad));
            p[2 * i + 1] = scale * (x * Math.sin(turnRad) + y * Math.cos(turnRad));
        }
        float[] code = new float[PatternCode.LENGTH];
        PatternCode.write(p[0], p[1], p[2], p[3], p[4], p[5], mirrored, code, 0);
        return code;
    }

    @RepeatedTest(20)
    void sizeAndRotation_doNotChangeACode(RepetitionInfo repetition) {
        Random dice = new Random(repetition.getCurrentRepetition());
        float[] turned = code(dice.nextDouble() * 7, 0.01 + 100 * dice.nextDouble(), false, false);
        float[] plain = code(0, 1, false, false);
        for (int i = 0; i < PatternCode.LENGTH; i++) {
            assertThat(turned[i]).isCloseTo(plain[i], within(1e-5f));
        }
    }

    @Test
    void mirroredPicture_readAsMirrored_hasTheSameCode() {
        float[] mirrored = code(0.7, 3, true, true);
        float[] plain = code(0, 1, false, false);
        for (int i = 0; i < PatternCode.LENGTH; i++) {
            assertThat(mirrored[i]).isCloseTo(plain[i], within(1e-5f));
        }
    }

    @Test
    void mirroredPicture_readAsPlain_hasAnotherCode() {
        assertThat(code(0, 1, true, false)[1]).isCloseTo(-code(0, 1, false, false)[1], within(1e-5f));
    }

    @Test
    void starOfSmallerRealPart_comesFirst() {
        float[] code = {0.5f, 0.1f, -0.2f, 0.3f};
        assertThat(PatternCode.order(code, 0)).isTrue();
        assertThat(code).containsExactly(-0.2f, 0.3f, 0.5f, 0.1f);
        assertThat(PatternCode.order(code, 0)).isFalse();
    }
}
