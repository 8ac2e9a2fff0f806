/**
 * The documents of the repository and the javadoc of all modules, as one static website. Not part of the shipped jar.
 * <pre>
 *   *.md ─▶ Documents ─▶ PageWriter ─┐
 *   linked files and pictures ───────┼─▶ Website ─▶ LinkCheck
 *   sources ─▶ Javadoc ──────────────┘
 * </pre>
 *
 * <p>The pages mirror the folders of the repository, so that relative links and pictures keep working. Nothing is loaded
 * from another origin: the website works without a network, from a folder or from any server.
 */
@NullMarked
package polewright.website;

import org.jspecify.annotations.NullMarked;
