package polewright.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class OffsetCovarianceTest {
    @Test
    void sigmasAlongTheAxes_areRootsOfTheVariances() {
        OffsetCovariance covariance = new OffsetCovariance(9, 1, 4);

        assertThat(covariance.sigmaEast().arcminutes()).isEqualTo(3, within(1e-12));
        assertThat(covariance.sigmaUp().arcminutes()).isEqualTo(2, within(1e-12));
    }

    /** The matrix [[5, 4], [4, 5]] has eigenvalues 9 and 1, by hand. */
    @Test
    void largestAndSmallestSigma_areRootsOfTheEigenvalues() {
        OffsetCovariance covariance = new OffsetCovariance(5, 4, 5);

        assertThat(covariance.largestSigma().arcminutes()).isEqualTo(3, within(1e-12));
        assertThat(covariance.smallestSigma().arcminutes()).isEqualTo(1, within(1e-12));
    }

    /** An ellipse with semi-axes 7′ and 2′ keeps them at any rotation. */
    @Test
    void turningTheEllipse_keepsLargestAndSmallestSigma() {
        Random random = new Random(7);
        for (int i = 0; i < 100; i++) {
            double angle = Math.PI * random.nextDouble();
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            OffsetCovariance turned = new OffsetCovariance(49 * c * c + 4 * s * s, 45 * c * s, 49 * s * s + 4 * c * c);

            assertThat(turned.largestSigma().arcminutes()).isEqualTo(7, within(1e-9));
            assertThat(turned.smallestSigma().arcminutes()).isEqualTo(2, within(1e-9));
            // The point one long semi-axis out lies on the 1-sigma ellipse.
            assertThat(turned.normalisedSquare(AxisOffset.ofArcminutes(7 * c, 7 * s)))
                    .isEqualTo(1, within(1e-9));
        }
    }

    /** Inverse of [[5, 4], [4, 5]] is [[5, −4], [−4, 5]] / 9: (1, 2) gives (5 − 16 + 20) / 9 = 1. */
    @Test
    void normalisedSquare_weighsTheErrorByTheInverse() {
        OffsetCovariance covariance = new OffsetCovariance(5, 4, 5);

        assertThat(covariance.normalisedSquare(AxisOffset.ofArcminutes(1, 2))).isEqualTo(1, within(1e-12));
        assertThat(covariance.normalisedSquare(AxisOffset.ofArcminutes(1, -1))).isEqualTo(2, within(1e-12));
        assertThat(covariance.normalisedSquare(AxisOffset.NONE)).isZero();
    }

    @Test
    void independentUncertaintiesAddAsVariances() {
        assertThat(new OffsetCovariance(1, 0.5, 2).plus(new OffsetCovariance(3, -1, 4)))
                .isEqualTo(new OffsetCovariance(4, -0.5, 6));
    }
}
