// @ts-check
/** The words of the page as one file: where it is offered, in it, and when it is damaged. */

export const oneFile = {
  name: "farthing.html",
  keep: "keep this page in one file",
  about: "(under 200 KB). It opens without a network on any device with a browser. Your shelf is not in it: save that to a file as well, and bring it back there.",
  gone: "The file did not come: it needs signal, once. Try again when there is some.",
  here: "This page is one file. Send it on as it is: it fetches nothing and sends nothing. What you keep stays in this browser, not in the file.",
};

export const damaged = "This copy of the page is damaged: an editor or a mail program changed it on the way. Nothing that you kept is lost. Get the file again, and send it in a zip folder.";
