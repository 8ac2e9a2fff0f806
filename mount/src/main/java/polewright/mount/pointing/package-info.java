/**
 * The mount's pointing model, fitted to centred stars.
 *
 * <pre>
 *   CentredStar (as read) ──▶ CentringCheck ──▶ the usable ones, and CentringDoubts with likely mistakes
 *        │                                        │
 *        └──▶ Centring (two places) ──────────────┴──▶ PointingFit ──▶ PointingModel ──▶ go-to error, axis, residuals,
 *                                                        ▲                               inseparable terms
 *                   ForkModel: terms + reading ◀──▶ the tube's direction
 * </pre>
 *
 * <p>GoToSky chooses the star that would help most next.
 */
@NullMarked
package polewright.mount.pointing;

import org.jspecify.annotations.NullMarked;
