/** What must be reviewed, authorised, held, released and looked into before, during and after work, and where that stands. */
package kerfbook.review;
