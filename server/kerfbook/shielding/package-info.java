/** Gamma dose rate around activated and contaminated parts: nuclides, attenuation, build-up, shapes, layers, point kernel. */
package kerfbook.shielding;
