// Begins the page: takes the key out of the link, asks for the state, and shows a view.
