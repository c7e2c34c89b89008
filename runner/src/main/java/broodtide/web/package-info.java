/**
 * A small web server for this machine alone, and what its pages are made of.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.web.LocalServer#open} serves a {@link broodtide.web.Site} at 127.0.0.1
 *       until it is closed; {@link broodtide.web.LocalServer#address} says where;
 *   <li>a {@link broodtide.web.Site} turns an address into an {@link broodtide.web.Response}, and
 *       says in words why one is refused;
 *   <li>{@link broodtide.web.Template#named} is a page with gaps, filled with pieces of {@link
 *       broodtide.web.Html}; {@link broodtide.web.PageFrame} puts heading, ways to other pages and
 *       cautions around it;
 *   <li>{@link broodtide.web.Query#of} reads the named values behind the question mark, checked as
 *       files are;
 *   <li>{@link broodtide.web.Assets#find} gives the few files that are ever sent.
 * </ul>
 *
 * <p>Every request passes the {@link broodtide.web.RequestGuard} before anything is done for it: it
 * must be meant for this machine by name, so that a hostile page in the same browser reaches
 * nothing. Text becomes {@link broodtide.web.Html} only through {@link broodtide.web.Html#text},
 * which escapes it. A request that is turned away is a {@link broodtide.web.Refused} with one
 * message; any other exception is reported as a fault of the program.
 *
 * <p>The server knows no page: what is served is the business of the site, such as the one of
 * {@code broodtide.classroom}.
 *
 * <p>A site is asked by several threads at once and must allow for it. Answers, templates, queries
 * and pieces of HTML are immutable.
 */
@NullMarked
package broodtide.web;

import org.jspecify.annotations.NullMarked;
