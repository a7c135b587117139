/** Answers over HTTP: reads a request, calls one thing, writes the answer; the only package that knows Javalin. */
package kerfbook.http;
