/**
 * What a mount's reading has to be corrected by, learned from stars that were centred.
 *
 * <pre>
 *   CentredStar (as read) ──▶ CentringCheck ──▶ those to believe, and CentringDoubts with the likely mistake
 *        │                                        │
 *        └──▶ Centring (two places) ──────────────┴──▶ PointingFit ──▶ PointingModel ──▶ go-to error, axis, residuals,
 *                                                        ▲                               terms that are one
 *                   ForkModel: terms + reading ◀──▶ where the tube looks
 * </pre>
 *
 * <p>GoToSky says which star would help most next.
 */
@NullMarked
package polewright.mount.pointing;

import org.jspecify.annotations.NullMarked;
