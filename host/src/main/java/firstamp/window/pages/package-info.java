/** All other pages, from the first screen to the verdict. */
package firstamp.window.pages;
