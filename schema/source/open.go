package source

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// Open reads a file of that name through the given opener, never more than one
// byte past the limit on size. It says what went wrong if the content cannot
// be had or is too large; whether it is JSON is for [Parse]. A *Fault that the
// opener gives as its error is handed on as it is.
func Open(name string, open func() (io.ReadCloser, error), l Limits) (*File, *Fault) {
	l = l.filled()
	in, err := open()
	if err != nil {
		return nil, openFault(name, err)
	}
	defer in.Close() // nothing was written, so closing has nothing to report
	data, err := io.ReadAll(io.LimitReader(in, int64(l.Bytes)+1))
	if err != nil {
		return nil, fileFault(unreadFile(name), Span{}, "the file could not be read to its end: "+reason(err), "a file that can be read", "copy the file to a disk of this machine and try again")
	}
	if len(data) > l.Bytes {
		return nil, tooLarge(unreadFile(name), l)
	}
	return NewFile(name, data), nil
}

// ReadPath reads a regular file from the disk, as [Open] does. Links are
// followed. A folder, a device and a pipe are refused.
func ReadPath(path string, l Limits) (*File, *Fault) {
	// Opening a pipe would wait for a writer, so look before opening, and
	// look again at what was opened.
	info, err := os.Stat(path)
	if err != nil {
		return nil, openFault(path, err)
	}
	if fault := refuseIrregular(path, info.Mode()); fault != nil {
		return nil, fault
	}
	return Open(path, func() (io.ReadCloser, error) { return openRegular(path) }, l)
}

func openRegular(path string) (io.ReadCloser, error) {
	in, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	info, err := in.Stat()
	if err == nil {
		if fault := refuseIrregular(path, info.Mode()); fault != nil {
			err = fault
		}
	}
	if err != nil {
		return nil, errors.Join(err, in.Close())
	}
	return in, nil
}

func refuseIrregular(path string, mode fs.FileMode) *Fault {
	at := unreadFile(path)
	switch {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		return fileFault(at, Span{}, "this is a folder", "a file", "name a file inside it")
	}
	return fileFault(at, Span{}, "this is not a regular file but a device, a pipe or a socket", "a file on disk", "to read from a pipe, name - and send the text to standard input")
}

func openFault(name string, err error) *Fault {
	at := unreadFile(name)
	var fault *Fault
	switch {
	case errors.As(err, &fault):
		return fault
	case errors.Is(err, fs.ErrNotExist):
		return fileFault(at, Span{}, "there is no such file", "the name of a file", "check the spelling of the name and the folder it is looked for in")
	case errors.Is(err, fs.ErrPermission):
		return fileFault(at, Span{}, "the file may not be read by this user", "a file that can be read", "change the permissions of the file, or copy it to a folder of your own")
	}
	return fileFault(at, Span{}, "the file could not be opened: "+reason(err), "a file that can be read", "check the name of the file and the disk it is on")
}

// reason leaves out the path that the operating system's errors repeat.
func reason(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return err.Error()
}
