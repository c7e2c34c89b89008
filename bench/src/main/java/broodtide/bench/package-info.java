/** Speed, measured. */
package broodtide.bench;
