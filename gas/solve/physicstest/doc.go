// Package physicstest is what the tests of the physics packages share: it
// evaluates the formula texts that they export, so that a text and its function
// are proved to be one formula, and it reads the published tables that they are
// checked against. It is for tests only, as net/http/httptest is.
package physicstest
